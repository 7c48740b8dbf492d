/**
 * The next checks, by what each is expected to tell per minute.
 *
 * Equation    I = sum_e p_e sum_o P(o|e) log2 (P(o|e)/P(o)),  P(o) = sum_e p_e P(o|e):  the expected fall of the entropy over
 *             healthy, all explanations and "unexplained", the sizes integrated over their posteriors
 * Symbols     e what may be the case | o what the check may show, in few cells where it is a number
 * Settles     the causes whose probability would rise to 0.95, or fall below 0.02 from 0.05 at least, under outcomes that together
 *             have at least 5 %
 * Numerics    cells and few sizes make I a little other than it is; the sizes of two faults together are taken as independent
 * Source      [lindley1956]
 */
import type { Prepared } from "../../tally/index.ts";
import type { Weighed } from "../weigh-all.ts";
import { type Alternative, alternativesOf } from "./alternatives.ts";
import { applicableChecks } from "./applicable-checks.ts";
import type { CheckEntry } from "./check-entry.ts";
import type { CheckLaw } from "./check-law.ts";
import type { FoundResult } from "./found-result.ts";
import { checkLaw } from "./law-of.ts";

export type RankedCheck = {
  readonly check: CheckEntry;
  readonly informationBits: number;
  readonly settles: readonly string[];
};

const SURE = 0.95;
const OUT = 0.02;
/** less likely than this, a cause is nearly out already */
const IN_DOUBT = 0.05;
const LIKELY_ENOUGH = 0.05;
/** below this a check is not worth a line */
const WORTH_BITS = 0.003;

/** what is less likely than this adds nothing to any check that could be seen */
const NEGLIGIBLE = 1e-5;

export function rankChecks(weighed: Weighed, prepared: Prepared, found: readonly FoundResult[]): RankedCheck[] {
  const alternatives = alternativesOf(weighed).filter(({ probability }) => probability > NEGLIGIBLE);
  return rankAmong(applicableChecks(prepared.model, found), alternatives);
}

export function rankAmong(checks: readonly CheckEntry[], alternatives: readonly Alternative[]): RankedCheck[] {
  const total = alternatives.reduce((sum, a) => sum + a.probability, 0);
  const all = alternatives.map((a) => ({ ...a, probability: a.probability / total }));
  const causes = [
    ...new Set(all.flatMap(({ faults }) => (faults === "unexplained" ? [] : faults.map((f) => f.cause)))),
  ];
  return checks
    .map((check) => {
      const shown = foreseen(checkLaw(check), all);
      return { check, informationBits: information(shown, all), settles: settled(shown, all, causes) };
    })
    .filter((ranked) => ranked.informationBits >= WORTH_BITS)
    .sort((a, b) => b.informationBits / b.check.minutes - a.informationBits / a.check.minutes);
}

type Foreseen = {
  /** one row an alternative; the same array where the check cannot tell them apart */
  readonly rows: readonly Float64Array[];
  readonly marginal: Float64Array;
};

function foreseen(law: CheckLaw, alternatives: readonly Alternative[]): Foreseen {
  const nothing = law.foresee([]);
  const rows = alternatives.map(({ faults }) =>
    faults !== "unexplained" && !faults.some((fault) => law.touches(fault.cause)) ? nothing : law.foresee(faults),
  );
  const marginal = new Float64Array(nothing.length);
  rows.forEach((row, e) => {
    const p = alternatives[e]!.probability;
    for (let o = 0; o < row.length; o++) marginal[o] = marginal[o]! + p * row[o]!;
  });
  return { rows, marginal };
}

function information({ rows, marginal }: Foreseen, alternatives: readonly Alternative[]): number {
  let bits = 0;
  rows.forEach((row, e) => {
    const p = alternatives[e]!.probability;
    for (let o = 0; o < row.length; o++) if (row[o]! > 0) bits += p * row[o]! * Math.log2(row[o]! / marginal[o]!);
  });
  return Math.max(0, bits);
}

function settled(
  { rows, marginal }: Foreseen,
  alternatives: readonly Alternative[],
  causes: readonly string[],
): string[] {
  return causes.filter((cause) => {
    const own = rows.flatMap((row, e) => {
      const { faults, probability } = alternatives[e]!;
      return faults !== "unexplained" && faults.some((f) => f.cause === cause) ? [{ row, probability }] : [];
    });
    const now = own.reduce((sum, { probability }) => sum + probability, 0);
    if (now >= SURE) return false;
    let crossing = 0;
    for (let o = 0; o < marginal.length; o++) {
      const joint = own.reduce((sum, { row, probability }) => sum + probability * row[o]!, 0);
      if (joint >= SURE * marginal[o]! || (now >= IN_DOUBT && joint < OUT * marginal[o]!)) crossing += marginal[o]!;
    }
    return crossing >= LIKELY_ENOUGH;
  });
}
