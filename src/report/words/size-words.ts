/** The size of a finding and the sizes that are ruled out, in words that need no table of symbols. */
import type { Exclusion, Size } from "../../job/result.ts";
import { type CauseSize, causeSize } from "./cause-sizes.ts";
import { formatInterval, formatNumber, withSign, withUnit } from "./number-words.ts";

export type ToldSize = { readonly name: string; readonly value: string; readonly interval: string };

export function tellSize(cause: string, size: Size): ToldSize {
  const words = causeSize(cause, cause);
  // A size whose unit is not 1 (an offset told in V beside g/s) is told as it stands, whatever the form of its cause.
  const { scale, zero, unit, signed } = size.unit === "1" ? unitless(words) : withItsUnit(words, size.unit);
  const told = formatInterval((size.value - zero) * scale, (size.low90 - zero) * scale, (size.high90 - zero) * scale);
  const sign = signed ? withSign : (text: string) => text;
  return {
    name: size.name,
    value: withUnit(sign(told.value), unit),
    interval: `${sign(told.low)} to ${sign(told.high)}`,
  };
}

/**
 * "manifold pressure reading more than 2.5 kPa low or 3 kPa high"; null where neither end says anything. Of a cause that
 * has only one direction only the far end is told: that its smallest sizes are improbable rules nothing out.
 */
export function tellExclusion(exclusion: Exclusion, title: string): string | null {
  const words = causeSize(exclusion.cause, title);
  const [low, high] = exclusion.beyond;
  const { scale, zero, unit } = exclusion.unit === "1" ? unitless(words) : withItsUnit(words, exclusion.unit);
  const amount = (value: number) => withUnit(formatNumber(Math.abs((value - zero) * scale), 2), unit);
  const told = (value: number) => Number.isFinite(value) && Math.abs(value) < 1e30;
  const side = (more: "more" | "less", end: number, direction: string): Side => ({
    lead: `${more} than`,
    rest: `${amount(end)} ${direction}`,
  });
  const sides: Side[] = [];
  if (words.form === "reduction") {
    if (told(low) && low < zero) sides.push({ lead: "by more than", rest: amount(low) });
  } else if (words.form === "remainder") {
    if (told(low)) sides.push({ lead: `${words.below} than`, rest: amount(low) });
  } else if (words.form === "amount" || words.form === "share") {
    if (told(high)) sides.push({ lead: `${words.above} than`, rest: amount(high) });
  } else {
    const nothing = BARELY * (high - low);
    if (told(low)) {
      if (low < zero - nothing) sides.push(side("more", low, words.below));
      else sides.push(low < zero + nothing ? atAll(words.below) : side("less", low, words.above));
    }
    if (told(high)) {
      if (high > zero + nothing) sides.push(side("more", high, words.above));
      else sides.push(high > zero - nothing ? atAll(words.above) : side("less", high, words.below));
    }
  }
  const [first, second] = sides;
  if (first === undefined) return null;
  if (second?.lead === first.lead && words.below !== "" && second.rest === first.rest.replace(words.below, words.above))
    return [words.noun, first.lead, first.rest, "or", words.above, words.where].filter((part) => part !== "").join(" ");
  const end = second === undefined ? [] : ["or", second.lead === first.lead ? "" : second.lead, second.rest];
  return [words.noun, first.lead, first.rest, ...end, words.where].filter((part) => part !== "").join(" ");
}

/** An end this near to nought (share of the interval) is told as nought. */
const BARELY = 0.05;

/** "low at all": no size in that direction remains */
const atAll = (direction: string): Side => ({ lead: "", rest: `${direction} at all` });

type Side = { readonly lead: string; readonly rest: string };

type Telling = { readonly scale: number; readonly zero: number; readonly unit: string; readonly signed: boolean };

function unitless(words: CauseSize): Telling {
  switch (words.form) {
    case "ratio":
      return { scale: 100, zero: 1, unit: "%", signed: true };
    case "relative":
    case "reduction":
      return { scale: 100, zero: 0, unit: "%", signed: true };
    case "share":
    case "remainder":
      return { scale: 100, zero: 0, unit: "%", signed: false };
    default:
      return { scale: 1, zero: 0, unit: "1", signed: words.form === "signed" };
  }
}

function withItsUnit(words: CauseSize, unit: string): Telling {
  return { scale: 1, zero: 0, unit, signed: words.form === "signed" };
}
