/** Quantities in the JSON files of the bench: a text with its unit, within the range that the physics behind it holds for. */
import { z } from "zod";
import { type Dimension, formatQuantity, parseQuantity } from "../../../quantities/index.ts";
import { readDifference } from "../option-values.ts";
import { readAnySignal } from "../signals.ts";

type Range = { readonly low: number; readonly high: number; readonly unit: string };

/** low and high in SI, both allowed */
export function quantity(dimension: Dimension, example: string, { low, high, unit }: Range) {
  return checked(example, (text) => {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) return `${parsed.message} ${parsed.remedy}`;
    return parsed.value >= low && parsed.value <= high
      ? null
      : `"${text}" is out of range: ${formatQuantity(low, unit)} to ${formatQuantity(high, unit)}.`;
  });
}

/** A difference of temperature, in K. */
export function temperatureDifference(example: string, most: number) {
  return checked(example, (text) => {
    const parsed = readDifference(text);
    if (!parsed.ok) return `${parsed.message} ${parsed.remedy}`;
    return parsed.value >= 0 && parsed.value <= most ? null : `"${text}" is out of range: 0 to ${most} K.`;
  });
}

/** A signal of any meter, with its unit. */
export function signalText(example: string) {
  return checked(example, (text) => {
    const parsed = readAnySignal(text, null);
    return parsed.ok ? null : `${parsed.message} ${parsed.remedy}`;
  });
}

function checked(example: string, faultOf: (text: string) => string | null) {
  return z
    .string()
    .check((context) => {
      const fault = faultOf(context.value);
      if (fault !== null) context.issues.push({ code: "custom", input: context.value, message: fault });
    })
    .meta({ description: `a quantity with its unit, such as "${example}"`, examples: [example] });
}
