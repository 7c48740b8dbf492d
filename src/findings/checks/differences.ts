/** The differences that a check judges, from the numbers read; SI. */
import { unit } from "../../quantities/index.ts";
import type { NumberCheck, ReadValue } from "./check-entry.ts";

export type Differences = { readonly values: readonly number[]; readonly against: readonly number[] };

export function differences(check: NumberCheck, numbers: { readonly [key: string]: number }): Differences {
  const against = check.values.map((value) =>
    value.against === null ? inSi(value, value.usual) : numbers[value.against]!,
  );
  return { values: check.values.map((value, i) => numbers[value.of]! - against[i]!), against };
}

/** A difference, or a value on a scale without offset, from the unit of the table. */
export function inSi(value: ReadValue, number: number): number {
  return number * unit(value.unit).factor;
}
