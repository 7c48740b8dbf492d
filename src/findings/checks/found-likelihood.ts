/**
 * Results of workshop checks as what is known beside the recordings.
 *
 * Equation    ln P(results | faults) = sum over checks of ln P(result | faults)
 * Assumes     given the faults and their sizes, checks err independently; a check made on one bank sees nothing of a fault that
 *             the other bank has alone
 */
import type { DefiniteFault, Known } from "../known.ts";
import type { Faults } from "./check-law.ts";
import { checkById } from "./check-table.ts";
import type { FoundResult } from "./found-result.ts";
import { checkLaw } from "./law-of.ts";

export function foundLikelihood(found: readonly FoundResult[]): Known {
  const judged = found.map((result) => resultLikelihood(result));
  return (faults) => judged.reduce((sum, likelihood) => sum + Math.log(likelihood(faults)), 0);
}

/** P(this result | faults), up to one constant of the result. */
export function resultLikelihood(result: FoundResult): (faults: Faults) => number {
  const check = checkById(result.check);
  if (check === undefined) throw new Error(`Assertion failed: there is no check ${result.check}`);
  const law = checkLaw(check);
  const { bank } = result;
  const sees = (fault: DefiniteFault) =>
    law.touches(fault.cause) && (bank === null || fault.bank === null || fault.bank === bank);
  // Asked for at every size of every pair, most of which the check cannot see.
  const nothing = law.likelihood(result, []);
  return (faults) => {
    if (faults === "unexplained") return law.likelihood(result, faults);
    return faults.some(sees) ? law.likelihood(result, faults.filter(sees)) : nothing;
  };
}
