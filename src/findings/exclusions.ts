/**
 * Sizes of a cause that this recording rules out at 95 %: what lies outside the central interval of the size's posterior when
 * every size, none included, is held equally likely before looking.
 */

import { reported } from "./size-scale.ts";
import type { WeighedCause } from "./weigh-all.ts";

export type ExcludedSizes = {
  readonly cause: string;
  readonly beyond: readonly [number, number];
  readonly unit: string;
};

/** An interval wider than this share of all sizes considered excludes too little to be worth saying. */
const WORTH_SAYING = 0.6;
const SURE_ENOUGH = 0.5;

export function excludedSizes(cause: WeighedCause): ExcludedSizes | null {
  if (cause.probability >= SURE_ENOUGH) return null;
  const none = cause.cause.kind === "ratio" ? 1 : 0;
  const samples = [...cause.profile, { size: none, logRatio: 0 }].sort((a, b) => a.size - b.size);
  const low = samples[0]!.size;
  const high = samples[samples.length - 1]!.size;
  const oneSided = cause.cause.sides.includes(0);
  const interval = centralInterval(
    samples,
    oneSided && none === low ? 0 : 0.025,
    oneSided && none === high ? 1 : 0.975,
  );
  if (interval === null || interval[1] - interval[0] > WORTH_SAYING * (high - low)) return null;
  // Where no fault at all lies outside, the cause is a suspect whose size is known, not one whose sizes are ruled out.
  if (none < interval[0] || none > interval[1]) return null;
  return {
    cause: cause.cause.id,
    beyond: [reported(cause.cause, interval[0]), reported(cause.cause, interval[1])],
    unit: cause.cause.unit,
  };
}

function centralInterval(
  samples: readonly { size: number; logRatio: number }[],
  low: number,
  high: number,
): [number, number] | null {
  const top = Math.max(...samples.map((s) => s.logRatio));
  if (!Number.isFinite(top)) return null;
  const density = samples.map((s) => Math.exp(s.logRatio - top));
  const areas = samples.slice(1).map((s, i) => ((density[i]! + density[i + 1]!) / 2) * (s.size - samples[i]!.size));
  const total = areas.reduce((sum, a) => sum + a, 0);
  if (!(total > 0)) return null;
  const at = (p: number) => {
    let below = 0;
    for (let i = 0; i < areas.length; i++) {
      if (below + areas[i]! >= p * total) {
        return samples[i]!.size + ((samples[i + 1]!.size - samples[i]!.size) * (p * total - below)) / areas[i]!;
      }
      below += areas[i]!;
    }
    return samples[samples.length - 1]!.size;
  };
  return [at(low), at(high)];
}
