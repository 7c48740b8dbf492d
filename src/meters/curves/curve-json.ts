/**
 * A curve as JSON (format "airtally-curve/1"), units in the names: what is written can be read back to the last digit.
 *
 * Points and polynomials are in SI, as are the parameters of laws (kg/s or m3/s against V, Hz, s or 1); `signalUnit` says what a
 * person reads the signal in. Unknown keys are refused with the nearest known one.
 */
import type { SignalUnit } from "../../engine/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import type { CurveForm, FormKind } from "./curve-form.ts";
import type { FlowCurve } from "./meter-curve.ts";

export type CurveTextReason = "not-a-curve" | "unknown-key" | "value-invalid";

const FORMAT = "airtally-curve/1";
const KEYS = ["format", "note", "signalUnit", "flow", "at", "form", "domain", "band"] as const;
const FORM_KEYS: { readonly [kind in FormKind]: readonly string[] } = {
  points: ["points"],
  power: ["scale", "offset", "exponent"],
  king: ["still", "slope", "exponent"],
  exponential: ["scale", "rate", "offset"],
  film: ["scaleFlow", "leak", "zero", "span"],
  "film-period": ["scaleFlow", "leak", "zero", "span"],
  polynomial: ["coefficients", "centre", "halfWidth"],
};

export function curveToJson(curve: FlowCurve): string {
  const at = curve.at === null ? null : { pressure_Pa: curve.at.pressure, temperature_K: curve.at.temperature };
  return `${JSON.stringify({ format: FORMAT, ...curve, at }, null, 2)}\n`;
}

export function curveFromJson(text: string): Result<FlowCurve, CurveTextReason> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch (error) {
    return failure("not-a-curve", `The curve is no JSON: ${(error as Error).message}.`, "Check brackets and commas.");
  }
  if (!isRecord(parsed) || parsed.format !== FORMAT) {
    return failure(
      "not-a-curve",
      `The curve does not begin with "format": "${FORMAT}".`,
      "Write a curve with this tool.",
    );
  }
  const stranger = Object.keys(parsed).find((key) => !(KEYS as readonly string[]).includes(key));
  if (stranger !== undefined) return unknownKey(stranger, KEYS);
  const form = readForm(parsed.form);
  if (!form.ok) return form;
  const { signalUnit, flow, domain, band } = parsed;
  if (!["V", "Hz", "ms", "ratio"].includes(signalUnit as string))
    return invalid("signalUnit", "one of V, Hz, ms, ratio");
  if (flow !== "mass" && flow !== "volume") return invalid("flow", "mass or volume");
  if (!isNumbers(domain) || domain.length !== 2 || !(domain[0]! < domain[1]!))
    return invalid("domain", "two ascending numbers");
  const at = parsed.at ?? null;
  const pressure = isRecord(at) ? at.pressure_Pa : null;
  const temperature = isRecord(at) ? at.temperature_K : null;
  if (
    at !== null &&
    (typeof pressure !== "number" || typeof temperature !== "number" || !(pressure > 0 && temperature > 0))
  ) {
    return invalid("at", "pressure_Pa and temperature_K above zero, or null");
  }
  const bandValue = band ?? null;
  if (bandValue !== null && !isBand(bandValue))
    return invalid("band", "signal and sd of equal length, signal ascending");
  return success({
    signalUnit: signalUnit as SignalUnit,
    flow,
    at: at === null ? null : { pressure: pressure as number, temperature: temperature as number },
    form: form.value,
    domain: [domain[0]!, domain[1]!],
    band: bandValue,
  });
}

function readForm(value: unknown): Result<CurveForm, CurveTextReason> {
  if (!isRecord(value) || !(String(value.kind) in FORM_KEYS)) {
    return invalid("form.kind", `one of ${Object.keys(FORM_KEYS).join(", ")}`);
  }
  const kind = value.kind as FormKind;
  const keys = ["kind", ...FORM_KEYS[kind]];
  const stranger = Object.keys(value).find((key) => !keys.includes(key));
  if (stranger !== undefined) return unknownKey(`form.${stranger}`, keys);
  for (const key of FORM_KEYS[kind]) {
    const part = value[key];
    if (key === "points") {
      if (!Array.isArray(part) || part.length < 2 || !part.every((p) => isNumbers(p) && p.length === 2)) {
        return invalid("form.points", "at least two pairs of numbers");
      }
    } else if (key === "coefficients") {
      if (!isNumbers(part) || part.length === 0) return invalid("form.coefficients", "numbers");
    } else if (!Number.isFinite(part)) return invalid(`form.${key}`, "a number");
  }
  return success(value as CurveForm);
}

function invalid(key: string, wanted: string) {
  return failure("value-invalid", `"${key}" of the curve must be ${wanted}.`, "Correct it, or write the curve again.");
}

function unknownKey(key: string, known: readonly string[]) {
  return failure(
    "unknown-key",
    `The curve has the key "${key}", which is not known.`,
    `Known are ${known.join(", ")}.`,
  );
}

function isRecord(value: unknown): value is { readonly [key: string]: unknown } {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isNumbers(value: unknown): value is number[] {
  return Array.isArray(value) && value.every(Number.isFinite);
}

function isBand(value: unknown): value is { signal: number[]; sd: number[] } {
  if (!isRecord(value) || !isNumbers(value.signal) || !isNumbers(value.sd)) return false;
  const { signal, sd } = value;
  return signal.length >= 2 && signal.length === sd.length && signal.every((s, i) => i === 0 || s > signal[i - 1]!);
}
