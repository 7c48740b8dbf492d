/** What the JSON files of the bench hold beside plain quantities: differences of temperature, signals of any meter. */
import { textWithUnit } from "../../quantity-schema.ts";
import { readDifference } from "../option-values.ts";
import { readAnySignal } from "../signals.ts";

/** A difference of temperature, in K. */
export function temperatureDifference(example: string, most: number) {
  return textWithUnit(example, (text) => {
    const parsed = readDifference(text);
    if (!parsed.ok) return `${parsed.message} ${parsed.remedy}`;
    return parsed.value >= 0 && parsed.value <= most ? null : `"${text}" is out of range: 0 to ${most} K.`;
  });
}

/** A signal of any meter, with its unit. */
export function signalText(example: string) {
  return textWithUnit(example, (text) => {
    const parsed = readAnySignal(text, null);
    return parsed.ok ? null : `${parsed.message} ${parsed.remedy}`;
  });
}
