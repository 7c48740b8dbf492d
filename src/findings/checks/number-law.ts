/**
 * Likelihood of a check whose readings are numbers: differences, normal about what the faults would shift them by.
 *
 * Equation    p(x | faults) = (1 - s) sum_q w_q prod_i N(x_i; sum_f shift_fqi, sd_i^2 + sum_f sd_fq^2) + s prod_i N(x_i; 0, (c sd_i)^2)
 * Symbols     q ways in which the faults may show, their odds multiplied | s, c share and width of slips
 * Limits      shifts of faults together add; a fault without a row shifts nothing
 * Numerics    foreseen in cells evenly spaced in asinh(x/sd): as fine as 0.4 sd near nothing, as wide as the shift far out
 */
import { logNormalDensity, normalCdf } from "../../numerics/index.ts";
import { condensed, overSizes } from "./alternatives.ts";
import type { NumberCheck } from "./check-entry.ts";
import type { CheckLaw, Faults } from "./check-law.ts";
import { ANYTHING, SLIP } from "./check-table.ts";
import { differences } from "./differences.ts";
import { shiftLaw, type Way } from "./shift-law.ts";

/** cell edges on each side of nothing, in asinh(x/sd), by number of values; the last cells are open */
const EDGES = [
  { step: 0.4, edges: 14 },
  { step: 0.55, edges: 8 },
] as const;

export function numberLaw(check: NumberCheck): CheckLaw {
  const { ways, usual, sds, touches } = shiftLaw(check);
  const healthy: Way = { weight: 1, means: sds.map(() => 0), variance: 0 };
  const edges = cellEdges(sds.length);
  const spread = ({ variance }: Way, times: number) => sds.map((sd) => times * Math.sqrt(sd ** 2 + variance));
  const cells = (way: Way, times: number) => {
    const widths = spread(way, times);
    return way.means.map((mean, i) => cellShares(edges, mean / sds[i]!, widths[i]! / sds[i]!)).reduce(outer);
  };
  const slip = cells(healthy, SLIP.widths);
  return {
    touches,
    foresee: (faults) =>
      faults === "unexplained"
        ? mix(faults, [healthy], slip, (way) => cells(way, 1))
        : overSizes(condensed(faults, touches), (sized) =>
            mix(sized, ways(sized, usual), slip, (way) => cells(way, 1)),
          ),
    likelihood: ({ numbers }, faults) => {
      const { values, against } = differences(check, numbers);
      const density = (way: Way, times: number) => {
        const widths = spread(way, times);
        // in units of the healthy standard deviation, so that it never exceeds one
        const log = widths.reduce(
          (sum, sd, i) => sum + logNormalDensity((values[i]! - way.means[i]!) / sd) - Math.log(sd / sds[i]!),
          0,
        );
        return Float64Array.of(Math.exp(log));
      };
      return mix(faults, ways(faults === "unexplained" ? [] : faults, against), density(healthy, SLIP.widths), (way) =>
        density(way, 1),
      )[0]!;
    },
  };
}

/** The ways in which the faults show, by their odds, and what has gone astray. */
function mix(faults: Faults, ways: readonly Way[], slip: Float64Array, of: (way: Way) => Float64Array): Float64Array {
  const astray = faults === "unexplained" ? 1 - (1 - SLIP.share) * (1 - ANYTHING) : SLIP.share;
  const out = slip.map((p) => astray * p);
  for (const way of ways) {
    const own = of(way);
    const share = (1 - astray) * way.weight;
    for (let k = 0; k < out.length; k++) out[k] = out[k]! + share * own[k]!;
  }
  return out;
}

function cellEdges(values: number): number[] {
  const { step, edges } = EDGES[Math.min(values, EDGES.length) - 1]!;
  return Array.from({ length: 2 * edges + 1 }, (_, k) => Math.sinh((k - edges) * step));
}

/** Shares of the cells between edges of a normal reading, all in units of the healthy standard deviation. */
function cellShares(edges: readonly number[], mean: number, sd: number): Float64Array {
  const out = new Float64Array(edges.length + 1);
  let below = 0;
  for (let k = 0; k < edges.length; k++) {
    const z = (edges[k]! - mean) / sd;
    const cdf = z < -FAR ? 0 : z > FAR ? 1 : phi(z);
    out[k] = cdf - below;
    below = cdf;
  }
  out[edges.length] = 1 - below;
  return out;
}

/** The normal distribution by straight lines between points 0.01 apart: within 1e-5, which a share of outcomes can bear. */
function phi(z: number): number {
  const at = (z + FAR) * 100;
  const k = Math.floor(at);
  return PHI[k]! + (at - k) * (PHI[k + 1]! - PHI[k]!);
}

/** beyond this many standard deviations a cell holds nothing that a slip would not hide */
const FAR = 6;
const PHI = Float64Array.from({ length: 200 * FAR + 2 }, (_, k) => normalCdf(k / 100 - FAR));

function outer(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length * b.length);
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) out[i * b.length + j] = a[i]! * b[j]!;
  return out;
}
