/** Mean trims at warm idle and at 2,500 rev/min of the standard recording, the last 20 s of each. Shared by a quick and a slow test. */
import { simulateFamily } from "./simulate-family.ts";
import type { Family } from "./standard-recorders.ts";

export function settledTrims(family: Family, seed: number): readonly number[] {
  const { truth } = simulateFamily({ family, seed, driving: 5 });
  return [
    [50, 70],
    [160, 180],
  ].map(([from, to]) => {
    const first = Math.round(from! / truth.step);
    const last = Math.round(to! / truth.step);
    let sum = 0;
    for (let i = first; i < last; i++) sum += (1 + truth.shortTrim[i]!) * (1 + truth.longTrim[i]!) - 1;
    return sum / (last - first);
  });
}
