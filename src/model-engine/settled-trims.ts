/** Mean trims at warm idle and at 2,500 rev/min of the standard recording, the last 20 s of each. Shared by a quick and a slow test. */

import { ambientAt } from "./model-engine.ts";
import { simulateFamily } from "./simulate-family.ts";
import type { Family } from "./standard-recorders.ts";

const SEA_LEVEL = ambientAt({ altitude: 0, temperature: 288, relativeHumidity: 0.5 });

export function settledTrims(family: Family, seed: number): readonly number[] {
  // A vane corrected for temperature alone is rich at altitude by its law (vane-and-vortex.test.ts): healthy means at sea level.
  const place = family === "petrol-with-vane" ? { ambient: SEA_LEVEL } : {};
  const { truth } = simulateFamily({ family, seed, driving: 5, ...place });
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
