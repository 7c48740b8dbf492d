/** What changed between two visits, in one sentence that a customer understands. */
import { listed, lower, lowOrHigh, WITNESS_NAMES } from "../outcome/words.ts";
import type { VisitView } from "../result.ts";

/** standard deviations of the 90 % interval */
const NINETY = 1.645;

export function changeSentence(from: VisitView, to: VisitView): string {
  const was = told(from);
  const is = told(to);
  const before = `In the visit “${from.name}” ${was}`;
  const after = `in “${to.name}” ${is}`;
  const moved = largestChange(from, to);
  const change =
    moved === null
      ? "no witness moved by more than its uncertainty"
      : `at ${moved.region} ${WITNESS_NAMES[moved.witness]} went from ${place(moved.from)} to ${place(moved.to)}`;
  return `${before}; ${after}: ${change}.`;
}

function told({ answer, leading }: VisitView): string {
  if (answer === "healthy") return "the air signal was healthy";
  if (leading === null || answer === "open") return "nothing was settled";
  const { title, alike } = leading;
  if (alike.length > 0)
    return `one of several causes that look alike stood out (${listed([title, ...alike].map(lower), "or")})`;
  return `the likely cause was: ${lower(title)}`;
}

/** A departure that rounds to nothing is agreement. */
function place(departure: number): string {
  const told = lowOrHigh(departure);
  return /(low|high)$/.test(told) ? told : "agreement with the others";
}

type Change = Pick<VisitView["departures"][number], "witness" | "region"> & {
  readonly from: number;
  readonly to: number;
};

/** The change that stands out most from its uncertainty; null where none leaves its 90 % interval. */
function largestChange(from: VisitView, to: VisitView): Change | null {
  let best: (Change & { readonly size: number }) | null = null;
  for (const { before, after } of pairs(from, to)) {
    const size = Math.abs(after.departure - before.departure) / Math.hypot(before.sd, after.sd);
    if (size > NINETY && size > (best?.size ?? 0))
      best = { witness: after.witness, region: after.region, from: before.departure, to: after.departure, size };
  }
  return best;
}

function pairs(from: VisitView, to: VisitView) {
  return to.departures.flatMap((after) => {
    const before = from.departures.find((d) => d.witness === after.witness && d.region === after.region);
    return before === undefined ? [] : [{ before, after }];
  });
}
