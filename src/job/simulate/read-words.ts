/** Options that are a word of a list or a plain number. */
import { type Result, success } from "../../quantities/index.ts";
import { type OptionReason, optionFailure } from "../meter/option-values.ts";

export function readChoice<Name extends string>(
  text: string,
  what: string,
  names: readonly Name[],
): Result<Name, OptionReason> {
  const found = names.find((name) => name === text);
  return found === undefined
    ? optionFailure(`There is no ${what} "${text}".`, `There are: ${names.join(", ")}.`)
    : success(found);
}

export function readNumber(
  text: string,
  what: string,
  range: { readonly low: number; readonly high: number; readonly whole?: boolean },
): Result<number, OptionReason> {
  const value = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)\s*$/.test(text) ? Number(text) : Number.NaN;
  if (value >= range.low && value <= range.high && (range.whole !== true || Number.isInteger(value)))
    return success(value);
  return optionFailure(
    `The ${what} "${text}" cannot be.`,
    `Give a ${range.whole === true ? "whole " : ""}number from ${range.low} to ${range.high}.`,
  );
}
