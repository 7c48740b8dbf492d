/**
 * How far a computed number agrees with a published one, as signed matched digits: minus the decimal logarithm of the relative
 * error. A wrong sign or a value that is not a number scores 0 whatever its size; a published zero has no relative error and needs
 * an absolute scale. The digits asked for lie between 2 and 15, so that a tolerance of 400 % cannot be written at all.
 */
import { expect } from "vitest";
import type { CheckRecord, Tolerance } from "./check-records.ts";
import { expected as expectedOf } from "./check-records.ts";

const FEWEST = 2;
const MOST = 15;
/** so that a value exactly at its tolerance passes */
const HAIR = 1e-6;

export function matchedDigits(actual: number, published: number, scale?: number): number {
  if (!Number.isFinite(actual) || !Number.isFinite(published)) return 0;
  if (published === 0 && scale === undefined) throw new Error("A published zero needs a stated absolute scale.");
  if (published !== 0 && Math.sign(actual) !== Math.sign(published)) return 0;
  const error = Math.abs(actual - published) / (published === 0 ? (scale as number) : Math.abs(published));
  return error === 0 ? MOST : Math.max(0, Math.min(MOST, -Math.log10(error)));
}

export function expectDigits(actual: number, published: number, digits: number, what = "", scale?: number): void {
  if (!(digits >= FEWEST - HAIR && digits <= MOST))
    throw new Error(`Between ${FEWEST} and ${MOST} digits can be asked for, not ${digits}.`);
  const matched = matchedDigits(actual, published, scale);
  expect(matched, `${what}: ${actual} against ${published}, ${matched.toFixed(2)} digits`).toBeGreaterThanOrEqual(
    digits,
  );
}

/** Compares with a record (or a part of it) at the tolerance the record states. */
export function expectRecord(
  actual: number,
  record: CheckRecord,
  options: { part?: string; scale?: number } = {},
): void {
  const published = expectedOf(record, options.part);
  const digits = digitsOf(record.tolerance, published, options.part, options.scale);
  expectDigits(actual, published, digits, `${record.id} ${options.part ?? ""}`, options.scale);
}

/** The digits a tolerance amounts to: 1e-9 relative is 9. */
export function digitsOf(tolerance: Tolerance, published: number, part?: string, scale?: number): number {
  if (tolerance.type === "exact") return MOST;
  if (tolerance.type !== "absolute" && tolerance.type !== "relative") {
    throw new Error(`A tolerance of type ${tolerance.type} has no digits.`);
  }
  const value = typeof tolerance.value === "number" ? tolerance.value : tolerance.value[part ?? ""];
  if (value === undefined) throw new Error(`No tolerance for ${part}`);
  const relative =
    tolerance.type === "relative" ? value : value / (published === 0 ? (scale ?? 1) : Math.abs(published));
  // never more than doubles can hold
  return Math.min(MOST - 0.5, -Math.log10(relative) - HAIR);
}

/** That a comparison can fail: it does, once something in it was moved. */
export function expectFailure(comparison: () => void, what = ""): void {
  expect(comparison, `${what} the comparison still holds`).toThrow();
}

/** For a published range, or the scatter that a source itself states where it is wider than two digits can say. */
export function expectInside(actual: number, range: readonly [number, number], what = ""): void {
  expect(actual, what).toBeGreaterThanOrEqual(range[0]);
  expect(actual, what).toBeLessThanOrEqual(range[1]);
}
