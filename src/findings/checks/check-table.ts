/** The table of workshop checks, typed. */
import type { CheckEntry } from "./check-entry.ts";
import table from "./checks.json" with { type: "json" };

export const CHECKS: readonly CheckEntry[] = table.checks as unknown as readonly CheckEntry[];

/** A reading misread: how often, and over how many standard deviations it is then spread. */
export const SLIP: { readonly share: number; readonly widths: number } = table.slip;

/** Of what is not in the catalogue, the share of cases in which a check may show anything. */
export const ANYTHING: number = table.unexplained.share;

export function checkById(id: string): CheckEntry | undefined {
  return CHECKS.find((check) => check.id === id);
}
