/** A starting assumptions file: every key with the table's value. */
import { ASSUMPTION_TABLE } from "../../tally/index.ts";

export function assumptionsTemplate(): string {
  const values = Object.fromEntries(ASSUMPTION_TABLE.map(({ key, value }) => [key, value]));
  const note =
    "Every assumption as it stands in the table: docs/assumptions.md says what each is and why. Change what you know better, remove the rest.";
  return `${JSON.stringify({ note, ...values }, null, 2)}\n`;
}
