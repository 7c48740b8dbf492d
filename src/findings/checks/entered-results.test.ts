// A result entered must move the answer as more data would: the posterior times the result's likelihood, size by size.
import { describe, expect, it } from "vitest";
import { inventedTally } from "../../../test/tally/invented-tally.ts";
import { prepare } from "../../tally/index.ts";
import type { Cause } from "../catalogue.ts";
import type { Known } from "../known.ts";
import { logSizePrior } from "../size-scale.ts";
import { type Weighed, weighAll } from "../weigh-all.ts";
import { foundLikelihood } from "./found-likelihood.ts";
import type { FoundResult } from "./found-result.ts";
import { rankChecks } from "./rank-checks.ts";
import { spokenFor } from "./settling-check.ts";

const SMOKE: FoundResult = { check: "smoke-test", bank: null, outcome: "smoke-at-manifold", numbers: {} };
const KEY_ON: FoundResult = {
  check: "key-on-pressure",
  bank: null,
  outcome: null,
  numbers: { reading: 99_400, barometer: 98_900 },
};
/** little noise is left, and a small leak: much stays open */
const prepared = prepare(inventedTally({ faults: [{ cause: "manifold-leak", size: 2e-6 }], noise: 0.02 }), null);
const before = weighAll(prepared);

/** E[likelihood of the results] over the sizes of a cause, by fine sums along each side's scale. */
function meanOver(cause: Cause, profile: Weighed["causes"][number]["profile"], known: Known): number {
  let [with_, without] = [0, 0];
  for (const sign of [-1, 1]) {
    const scaleOf = (size: number) => Math.log(cause.kind === "ratio" ? sign * Math.log(size) : sign * size);
    const own = profile
      .filter(({ size }) => Number.isFinite(scaleOf(size)))
      .map(({ size, logRatio }) => ({ t: scaleOf(size), logRatio }))
      .sort((a, b) => a.t - b.t);
    if (own.length < 2) continue;
    const [low, high] = [own[0]!.t, own[own.length - 1]!.t];
    const share = cause.sides[sign < 0 ? 0 : 1];
    const steps = 4000;
    for (let n = 0, i = 0; n < steps; n++) {
      const t = low + ((high - low) * (n + 0.5)) / steps;
      while (own[i + 1]!.t < t) i++;
      const part = (t - own[i]!.t) / (own[i + 1]!.t - own[i]!.t);
      const logRatio = own[i]!.logRatio * (1 - part) + own[i + 1]!.logRatio * part;
      const density = share * Math.exp(logRatio + logSizePrior({ low, high }, t)) * ((high - low) / steps);
      const size = cause.kind === "ratio" ? Math.exp(sign * Math.exp(t)) : sign * Math.exp(t);
      with_ += density * Math.exp(known([{ cause: cause.id, bank: null, size }]));
      without += density;
    }
  }
  return with_ / without;
}

describe.each([
  ["a smoke test", [SMOKE]],
  ["a reading", [KEY_ON]],
  ["both", [SMOKE, KEY_ON]],
] as const)("%s", (_, found) => {
  const known = foundLikelihood(found);
  const after = weighAll(prepared, known);

  it("multiplies healthy, unexplained and every single cause by its likelihood over the sizes", () => {
    // (pairs are held against brute force in weigh-pair.test.ts)
    const scale = after.healthy.probability / (before.healthy.probability * Math.exp(known([])));
    let compared = 0;
    for (const { causes, probability } of after.explanations) {
      if (causes.length > 1 || probability < 1e-4) continue;
      const { cause } = causes[0]!;
      const prior = before.explanations.find((e) => e.causes.length === 1 && e.causes[0]!.cause.id === cause.id)!;
      const { profile } = before.causes.find((c) => c.cause.id === cause.id)!;
      const expected = scale * prior.probability * meanOver(cause, profile, known);
      expect(Math.abs(probability / expected - 1), cause.id).toBeLessThan(0.03);
      compared += 1;
    }
    expect(compared).toBeGreaterThanOrEqual(4);
    const odds = (w: typeof before) => w.healthy.probability / w.unexplained.probability;
    expect(odds(after) / odds(before)).toBeCloseTo(Math.exp(known([]) - known("unexplained")), 9);
  });

  it("moves the size where the likelihood depends on it", () => {
    const mean = (w: typeof before) => {
      const { nodes } = w.causes.find((c) => c.cause.id === "manifold-leak")!;
      return nodes.reduce((sum, n) => sum + n.weight * Math.log(n.size), 0);
    };
    if (found.some((result) => result.check === "smoke-test")) expect(mean(after)).toBeGreaterThan(mean(before));
    else expect(mean(after)).toBeCloseTo(mean(before), 1);
  });
});

describe("after a result", () => {
  const after = weighAll(prepared, foundLikelihood([SMOKE]));
  it("the check that was made is not proposed again, and others are", () => {
    const ids = (w: typeof before, found: readonly FoundResult[]) =>
      rankChecks(w, prepared, found).map((r) => r.check.id);
    expect(ids(before, [])).toContain("smoke-test");
    expect(ids(after, [SMOKE])).not.toContain("smoke-test");
    expect(ids(after, [SMOKE]).length).toBeGreaterThan(2);
  });

  it("proposes no check of a part that the engine lacks or the recording has shown", () => {
    const ids = rankChecks(before, prepared, []).map((r) => r.check.id);
    for (const id of ["pressure-test", "egr-blocked", "full-load-pull"]) expect(ids).not.toContain(id);
  });

  it("says how strongly it speaks for the leak, against all else", () => {
    const [spoken] = spokenFor("manifold-leak", after, [SMOKE]);
    expect(spoken!.ratio).toBeGreaterThan(7);
    // what was believed before, out of the posterior with the result in it
    const share = (w: typeof before) => w.causes.find((c) => c.cause.id === "manifold-leak")!.probability;
    const odds = (p: number) => p / (1 - p);
    expect(odds(share(after)) / odds(share(before))).toBeCloseTo(spoken!.ratio, -0.5);
    expect(spokenFor(null, after, [SMOKE])[0]!.ratio).toBeLessThan(0.5);
  });
});
