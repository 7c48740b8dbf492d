/** The forms of a curve in words, and the numbers that make them. */
import type { CurveForm } from "../../meters/index.ts";
import { round } from "../outcome/points.ts";

const NAMES = {
  points: "points",
  power: "power law",
  king: "King's law",
  exponential: "exponential",
  film: "film law",
  "film-period": "film law of a period",
} as const;

export function lawName(form: CurveForm): string {
  if (form.kind !== "polynomial") return NAMES[form.kind];
  const degree = form.coefficients.length - 1;
  return degree === 1 ? "straight line" : `polynomial of degree ${degree}`;
}

/** Numbers of a law in SI, by the names of airtally-curve/1; none for points. */
export function lawParameters(form: CurveForm): { name: string; value: number }[] {
  const { kind, ...rest } = form;
  if (kind === "points") return [];
  return Object.entries(rest).flatMap(([name, value]) =>
    Array.isArray(value)
      ? value.map((c: number, k) => ({ name: `${name.replace(/s$/, "")} ${k}`, value: round(c) }))
      : [{ name, value: round(value as number) }],
  );
}
