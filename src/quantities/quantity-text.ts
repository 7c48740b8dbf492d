/**
 * Quantities as people write them: a number and its unit ("98.9 kPa", "12 degC", "1,998 cm3" is refused: a comma
 * could be a decimal mark or a thousands mark, so it is asked for again).
 */
import { failure, type Result, success } from "./result.ts";
import { type Dimension, findUnit, fromSi, toSi, unitsOf } from "./units.ts";

export type QuantityReason = "not-a-quantity" | "wrong-unit";

const PATTERN = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\S.*?)?\s*$/;

/** SI value of a text such as "98.9 kPa" that must be of the given dimension. */
export function parseQuantity(text: string, dimension: Dimension): Result<number, QuantityReason> {
  const wanted = unitsOf(dimension)
    .slice(0, 5)
    .map((u) => u.symbol)
    .join(", ");
  const match = PATTERN.exec(text);
  if (match === null) {
    return failure(
      "not-a-quantity",
      `"${text}" is not a number with a unit.`,
      `Write for example "${example(dimension)}" (units: ${wanted}).`,
    );
  }
  const [, number, unitText] = match;
  if (unitText === undefined) {
    return failure(
      "wrong-unit",
      `"${text}" has no unit.`,
      `Write for example "${example(dimension)}" (units: ${wanted}).`,
    );
  }
  // "l", "c", "f" and the like mean different things in different places, so the dimension asked for decides first.
  const found = unitsOf(dimension).find((u) => u === findUnit(unitText)) ?? findUnit(unitText);
  if (found === undefined || found.dimension !== dimension) {
    return failure(
      "wrong-unit",
      `"${unitText}" in "${text}" is not a unit of ${dimensionName(dimension)}.`,
      `Use one of: ${wanted}.`,
    );
  }
  const value = toSi(Number(number), found);
  if (!Number.isFinite(value)) return failure("not-a-quantity", `"${text}" is too large.`, "Check the number.");
  return success(value);
}

/** SI value as text in the first-named unit; the inverse of `parseQuantity` to the digits asked for. */
export function formatQuantity(value: number, symbol: string, digits = 6): string {
  const u = findUnit(symbol);
  if (u === undefined) throw new Error(`Assertion failed: no unit ${symbol}`);
  return `${Number(fromSi(value, u).toPrecision(digits))} ${u.symbol}`;
}

function example(dimension: Dimension): string {
  const examples: Partial<Record<Dimension, string>> = {
    pressure: "98.9 kPa",
    temperature: "12 degC",
    massFlow: "3.5 g/s",
    volumeFlow: "240 cm3/min",
    time: "0.9 ms",
    length: "70 mm",
    volume: "1998 cm3",
    voltage: "5 V",
    ratio: "25 %",
  };
  return examples[dimension] ?? `1 ${unitsOf(dimension)[0]?.symbol ?? ""}`;
}

function dimensionName(dimension: Dimension): string {
  return dimension.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
