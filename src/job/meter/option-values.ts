/** Options of `airtally meter` as texts with units ("98.9 kPa") to SI, each within the range that the physics behind it holds for. */
import {
  type Dimension,
  type Failure,
  failure,
  formatQuantity,
  parseQuantity,
  type Result,
  success,
} from "../../quantities/index.ts";

export type OptionReason = "option-invalid";

export type OptionRule = {
  /** "difference": of temperature, in K */
  readonly dimension: Dimension | "difference";
  /** SI, both ends allowed */
  readonly low: number;
  readonly high: number;
  /** unit in which the range is told */
  readonly unit: string;
};

export type OptionTexts<Key extends string> = { readonly [key in Key]?: string | undefined };

export function readOptions<Key extends string>(
  texts: OptionTexts<NoInfer<Key>>,
  rules: { readonly [key in Key]: OptionRule },
): Result<{ readonly [key in Key]: number | null }, OptionReason> {
  const values = {} as { [key in Key]: number | null };
  for (const key of Object.keys(rules) as Key[]) {
    const text = texts[key];
    const value = text === undefined ? success(null) : readOption(text, key, rules[key]);
    if (!value.ok) return value;
    values[key] = value.value;
  }
  return success(values);
}

export function readOption(text: string, key: string, rule: OptionRule): Result<number, OptionReason> {
  const parsed = rule.dimension === "difference" ? readDifference(text) : parseQuantity(text, rule.dimension);
  const name = wordsOf(key);
  if (!parsed.ok) return failure("option-invalid", `The ${name} is off: ${parsed.message}`, parsed.remedy);
  // a hair of room, so that "-60 degC" is within a range that begins there
  const room = 1e-9 * Math.max(Math.abs(rule.low), Math.abs(rule.high));
  if (parsed.value < rule.low - room || parsed.value > rule.high + room)
    return failure("option-invalid", `The ${name} "${text}" is out of range.`, `Give ${rangeOf(rule)}.`);
  return success(parsed.value);
}

/** "0 m, 1000 m, 2000 m" to numbers, one unit each. */
export function readList(text: string, key: string, rule: OptionRule): Result<readonly number[], OptionReason> {
  const values: number[] = [];
  for (const part of text.split(",")) {
    const value = readOption(part.trim(), key, rule);
    if (!value.ok) return value;
    values.push(value.value);
  }
  return values.length <= MOST_IN_A_LIST
    ? success(values)
    : optionFailure(`${values.length} ${wordsOf(key)} are too many.`, `Give at most ${MOST_IN_A_LIST}.`);
}

const MOST_IN_A_LIST = 50;

export function optionFailure(message: string, remedy: string): Failure<OptionReason> {
  return failure("option-invalid", message, remedy);
}

/** A difference of temperature: kelvin alone, because "0.3 degC" would be a temperature. */
export function readDifference(text: string): Result<number, "not-a-quantity"> {
  const [, number] = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*K\s*$/.exec(text) ?? [];
  if (number === undefined)
    return failure("not-a-quantity", `"${text}" is not a difference of temperature.`, 'Write it in kelvin: "0.3 K".');
  return success(Number(number));
}

function rangeOf({ low, high, unit, dimension }: OptionRule): string {
  if (dimension === "difference") return `${low} to ${high} K`;
  return `${formatQuantity(low, unit)} to ${formatQuantity(high, unit)}`;
}

/** "seaLevelTemperature" -> "sea level temperature" */
function wordsOf(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
