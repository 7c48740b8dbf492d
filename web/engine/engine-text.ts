/**
 * Between the form and the engine file. The form knows the lines of engine-fields.ts; whatever else a loaded file holds
 * (notes, sensor points ...) is kept as it was.
 */
import { failure, type Result, success } from "../../src/quantities/index.ts";
import { formatPoints, parsePoints } from "./curve-points.ts";
import { ENGINE_FIELDS } from "./engine-fields.ts";
import type { EngineField } from "./field-kinds.ts";

/** What stands in each line of the form, by path; empty where nothing is said. */
export type EngineValues = { readonly [path: string]: string };

type Json = { [key: string]: unknown };

export type EngineForm = {
  readonly values: EngineValues;
  /** the loaded file, for what the form does not show */
  readonly base: Readonly<Json>;
};

const FORMAT = "airtally-engine/1";
const METER_IDS = ["meter", "meter-2"];

export const EMPTY_FORM: EngineForm = { values: {}, base: {} };

export function engineText({ values, base }: EngineForm): string {
  const file: Json = { format: FORMAT, strokes: 4, ...structuredClone(base) };
  for (const field of ENGINE_FIELDS) setPath(file, field.path.split("."), jsonOf(field, values[field.path] ?? ""));
  const meters = Array.isArray(file.meters) ? file.meters : [];
  const named = meters
    .map((meter: Json | undefined, k) => ({ id: METER_IDS[k], ...meter }))
    .filter((meter: Json) => meter.kind !== undefined);
  if (named.length > 0) file.meters = named;
  else delete file.meters;
  return `${JSON.stringify(file, null, 2)}\n`;
}

export function readEngineText(text: string, name: string): Result<EngineForm, "not-an-engine-file"> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    // JSON.parse throws nothing but SyntaxError
    return notAnEngineFile(name, `it is not JSON (${(error as SyntaxError).message})`);
  }
  if (!isObject(json) || json.format !== FORMAT) return notAnEngineFile(name, `it has no "format": "${FORMAT}"`);
  const file = json;
  const values = Object.fromEntries(
    ENGINE_FIELDS.map((field) => [field.path, textOf(field, valueAt(file, field.path.split(".")))]),
  );
  return success({ values, base: file });
}

function notAnEngineFile(name: string, why: string) {
  return failure("not-an-engine-file", `"${name}" is no engine file: ${why}.`, "Choose one that was saved here.", {
    file: name,
  });
}

function jsonOf(field: EngineField, text: string): unknown {
  const value = text.trim();
  if (value === "") return undefined;
  if (field.kind === "points") {
    const points = parsePoints(value);
    return points.ok ? points.value : value;
  }
  const isNumber = field.kind === "number" || field.path === "banks";
  return isNumber && Number.isFinite(Number(value)) ? Number(value) : value;
}

function textOf(field: EngineField, value: unknown): string {
  if (value === undefined || value === null) return "";
  if (field.kind === "points") return formatPoints(value);
  return typeof value === "object" ? "" : String(value);
}

function valueAt(node: unknown, [key, ...rest]: readonly string[]): unknown {
  if (key === undefined) return node;
  return typeof node === "object" && node !== null ? valueAt((node as Json)[key], rest) : undefined;
}

/** Sets or, with undefined, removes what is at a path; parents are made when needed and removed when left empty. */
function setPath(node: Json, [key, ...rest]: readonly string[], value: unknown): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    if (value === undefined) {
      // a fuel given by its ratio is an object that the form does not show: an empty line leaves it alone
      if (!isObject(node[key])) delete node[key];
    } else node[key] = value;
    return;
  }
  const child = node[key];
  if (child === undefined && value === undefined) return;
  const parent = typeof child === "object" && child !== null ? (child as Json) : /^\d+$/.test(rest[0] ?? "") ? [] : {};
  node[key] = parent;
  setPath(parent as Json, rest, value);
  if (Object.keys(parent).length === 0) delete node[key];
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
