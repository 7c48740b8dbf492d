/**
 * What the tally picture shows: each witness's departure from the common answer at each steady stretch, ln(witness/air),
 * with 90 % bars, and what the leading causes would do, along the air flow.
 *
 * The vertical axis is linear in the logarithm and labelled in per cent, so that 20 % low and 25 % high, which undo
 * each other, are equally far from nought.
 */
import type { Outcome, PointResult, SignatureView, WitnessId } from "../../job/result.ts";
import { linearScale, linearTicks, logScale, logTicks, type Scale } from "../charts/scale.ts";
import { WITNESS_ORDER } from "../charts/witness-look.tsx";

/** 90 % of a normal distribution lies within so many standard deviations. */
export const SD_TO_90 = 1.645;

export type TallyMark = {
  readonly witness: WitnessId;
  readonly point: PointResult;
  readonly air: number;
  readonly departure: number;
  /** half length of the 90 % bar */
  readonly half: number;
};

/** A mark whose bar is this much longer than those of the best fifth says little beside them, and is drawn pale. */
const VAGUE = 3;
const BEST_SHARE = 0.2;
const VAGUE_REACH = 2;

export type TallyModel = {
  readonly marks: readonly TallyMark[];
  readonly witnesses: readonly WitnessId[];
  readonly bands: readonly SignatureView[];
  readonly x: Scale;
  readonly y: Scale;
  readonly xTicks: readonly number[];
  /** departures as fractions (-0.1 = 10 % low) */
  readonly yTicks: readonly number[];
  /** bars longer than this are drawn pale; null where none is */
  readonly vagueFrom: number | null;
  /** pale marks so far off that they would flatten everything else: counted in the key, told in the table */
  readonly outside: readonly TallyMark[];
  readonly pointsShown: number;
  /** steady stretches where the witnesses give no common answer, so no departure either */
  readonly pointsWithout: number;
};

const LEADING_CAUSES = 2;
const LONGEST_BAR = 0.12;
const SMALLEST_RANGE = 0.04;
/** an axis in per cent cannot reach -100 %, whose logarithm has no end */
const MOST_LOW = -0.95;

/** null where no stretch has a common answer: then there is no picture to draw. */
export function tallyModel({ result, view }: Outcome): TallyModel | null {
  const all = result.operatingPoints.flatMap(marksOf);
  if (all.length === 0) return null;
  const pale = vagueFrom(all);
  const marks = all.filter(withinSight(all, pale));
  const airs = marks.map((m) => m.air);
  const [xLow, xHigh] = padded(Math.min(...airs), Math.max(...airs));
  // Every mark fits; of a bar that is drawn pale only what falls within the picture.
  const reach = (m: TallyMark) => (pale !== null && m.half > pale ? 0 : Math.min(m.half, LONGEST_BAR));
  const [yLow, yHigh, yTicks] = departureAxis(
    Math.min(-SMALLEST_RANGE, ...marks.map((m) => m.departure - reach(m))),
    Math.max(SMALLEST_RANGE, ...marks.map((m) => m.departure + reach(m))),
  );
  const present = new Set(all.map((m) => m.witness));
  const points = new Set(all.map((m) => m.point.id));
  const causes = [...new Set(view.signatures.map((s) => s.cause))].slice(0, LEADING_CAUSES);
  return {
    marks,
    witnesses: WITNESS_ORDER.filter((w) => present.has(w)),
    bands: view.signatures.filter((s) => causes.includes(s.cause)),
    x: logScale(xLow, xHigh),
    y: linearScale(yHigh, yLow),
    xTicks: flowTicks(xLow, xHigh),
    yTicks,
    vagueFrom: pale,
    outside: all.filter((mark) => !marks.includes(mark)),
    pointsShown: points.size,
    pointsWithout: result.operatingPoints.length - points.size,
  };
}

function marksOf(point: PointResult): TallyMark[] {
  const air = point.air_g_per_s;
  if (air === null || !(air > 0)) return [];
  return WITNESS_ORDER.flatMap((witness) => {
    const said = point.witnesses[witness];
    if (said === undefined || !(said.massFlow_g_per_s > 0)) return [];
    return [
      { witness, point, air, departure: Math.log(said.massFlow_g_per_s / air), half: SD_TO_90 * said.relativeSd },
    ];
  });
}

/** A short axis has too few 1-2-5 ticks to read it by. */
function flowTicks(low: number, high: number): readonly number[] {
  const ticks = logTicks(low, high);
  return ticks.length >= 3 ? ticks : linearTicks(low, high, 6);
}

function vagueFrom(marks: readonly TallyMark[]): number | null {
  const halves = marks.map((m) => m.half).sort((a, b) => a - b);
  const limit = VAGUE * (halves[Math.floor(halves.length * BEST_SHARE)] ?? 0);
  return halves.some((half) => half > limit) ? limit : null;
}

/** A vague mark may widen the picture to twice what the clear ones need, no further: one reading of little worth must not hide the rest. */
function withinSight(marks: readonly TallyMark[], pale: number | null): (mark: TallyMark) => boolean {
  const isClear = (m: TallyMark) => pale === null || m.half <= pale;
  const furthest = Math.max(SMALLEST_RANGE, ...marks.filter(isClear).map((m) => Math.abs(m.departure) + m.half));
  return (mark) => isClear(mark) || Math.abs(mark.departure) <= VAGUE_REACH * furthest;
}

function padded(low: number, high: number): [number, number] {
  const ratio = Math.max(1.12, (high / low) ** 0.05);
  return [low / ratio, high * ratio];
}

/** Ends on round per cents, and those between, thinned where the logarithm would let them touch. */
function departureAxis(low: number, high: number): [low: number, high: number, ticks: readonly number[]] {
  const inner = linearTicks(Math.expm1(low), Math.expm1(high), 8);
  const step = (inner[1] ?? 0.02) - (inner[0] ?? 0);
  const first = Math.max(Math.floor(Math.expm1(low) / step + 1e-9) * step, MOST_LOW);
  const last = Math.ceil(Math.expm1(high) / step - 1e-9) * step;
  const ends: [number, number] = [Math.min(low, Math.log1p(first)), Math.log1p(last)];
  const closest = (ends[1] - ends[0]) * 0.05;
  const kept: number[] = [];
  const count = Math.round((last - first) / step);
  const all = Array.from({ length: count + 1 }, (_, k) => Number((first + k * step).toPrecision(6)));
  for (const tick of all.sort((a, b) => Math.abs(a) - Math.abs(b))) {
    const place = Math.log1p(tick);
    if (kept.every((other) => Math.abs(Math.log1p(other) - place) >= closest)) kept.push(tick);
  }
  return [...ends, kept.sort((a, b) => a - b)];
}
