/** Quantities in JSON files: a text with its unit, of a dimension, within what can be. */
import { z } from "zod";
import { type Dimension, formatQuantity, parseQuantity } from "../quantities/index.ts";

/** low and high in SI, both allowed; `unit` is the one they are told in */
export type Range = { readonly low: number; readonly high: number; readonly unit: string };

/** A quantity with its unit, such as "98.9 kPa". */
export function quantity(dimension: Dimension, example: string, allowed: Range | "positive" | "any" = "positive") {
  return textWithUnit(example, (text) => {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) return `${parsed.message} ${parsed.remedy}`;
    const { value } = parsed;
    if (allowed === "any") return null;
    if (allowed === "positive") return value > 0 ? null : `"${text}" must be more than nothing.`;
    const { low, high, unit } = allowed;
    if (value >= low && value <= high) return null;
    return `"${text}" is out of range: ${formatQuantity(low, unit)} to ${formatQuantity(high, unit)}.`;
  });
}

/** A text that `faultOf` finds nothing wrong with. */
export function textWithUnit(example: string, faultOf: (text: string) => string | null) {
  return z
    .string()
    .check((context) => {
      const fault = faultOf(context.value);
      if (fault !== null) context.issues.push({ code: "custom", input: context.value, message: fault });
    })
    .meta({ description: `a quantity with its unit, such as "${example}"`, examples: [example] });
}
