/**
 * Whether a text is a unit, and a header cell taken apart into name and unit as far as the writing says so:
 * "Name [unit]", "Name (unit)", "Name, unit", "Name in unit", "Name / unit". A unit hidden in the name itself
 * ("MAP_kPa") is left there: whether it is one depends on what the channel is.
 */
import { findUnit } from "../../quantities/index.ts";

/** Words that stand where units stand, without being convertible ones. */
const OTHER_UNITS = new Set(
  [
    "afr :1 λ lambda phi on/off onoff bool boolean flag state status enum counts count raw steps step bits hex adc index",
    "mg/str mg/stroke mg/hub mg/cyl mg/hb mm3/hub mm3/str mm3 g/rev g/cyl g/stroke",
    "l/100km mpg km/l nm lbft lb-ft °kw °ca °crk °btdc °atdc deg. grdkw °kurbelwelle n/a none unitless",
    "psig barg kpag psia bara kpaa hz/v v/v n·m s·10 mg/h g/h",
  ].flatMap((words) => words.split(" ")),
);
const QUALIFIER = /[\s_(]*(?:abs|absolute|absolut|absolu|absoluto|gauge|gage|rel|relative|relativ|g|a|ü)\.?\)?$/i;

export function looksLikeUnit(text: string): boolean {
  const unit = text.trim();
  if (unit === "" || unit.length > 24) return false;
  if (findUnit(unit) !== undefined || OTHER_UNITS.has(unit.toLowerCase().replace(/\s+/g, ""))) return true;
  const bare = unit.replace(QUALIFIER, "");
  return bare !== unit && bare !== "" && findUnit(bare) !== undefined;
}

/** A longer cell is no name with a unit. */
const LONGEST_NAME = 300;

export type HeaderParts = { readonly name: string; readonly unit: string | null };

export function partsOfHeader(cell: string): HeaderParts {
  const text = cell.trim().replace(/\s+/g, " ");
  if (text.length > LONGEST_NAME) return { name: text, unit: null };
  return bracketed(text) ?? afterMark(text) ?? { name: text, unit: null };
}

function bracketed(text: string): HeaderParts | null {
  const match = /^(.*?)\s*(?:\[([^[\]]*)\]|\(((?:[^()]|\([^()]*\))*)\)|<([^<>]*)>|\{([^{}]*)\})\s*(.*)$/.exec(text);
  if (match === null) return null;
  const [, before = "", square, round, angle, curly, after = ""] = match;
  const inside = (square ?? round ?? angle ?? curly ?? "").trim();
  const name = `${before} ${after}`.trim();
  if (name === "") return null;
  if (inside === "") return { name, unit: null };
  if (looksLikeUnit(inside)) return { name, unit: inside };
  // Square brackets hold units by habit, also ones that are not in the table; a bare number is an index.
  const squareUnit = square !== undefined && after === "" && !/^[\d\s]+$|bank|sensor|cyl/i.test(inside);
  if (squareUnit) return { name, unit: inside };
  const rest = bracketed(after);
  return rest === null ? null : { name: `${before} (${inside}) ${rest.name}`.trim(), unit: rest.unit };
}

function afterMark(text: string): HeaderParts | null {
  const match = /^(.+?)(?:\s*[,;:]\s*|\s+in\s+|\s*\/\s+|\s+-\s+)([^,;]+)$/i.exec(text);
  const [, name, unit] = match ?? [];
  if (name !== undefined && unit !== undefined && looksLikeUnit(unit)) return { name: name.trim(), unit: unit.trim() };
  return afterSlash(text);
}

/** "p/kPa", "maf/g/s"; "A/C" and "A/F" name no unit, "km/h" is one. */
function afterSlash(text: string): HeaderParts | null {
  const slash = text.indexOf("/");
  if (slash < 1 || findUnit(text) !== undefined) return null;
  const unit = text.slice(slash + 1);
  // "Fuel rate g/s": the stroke is inside the unit, not before it.
  const blank = text.lastIndexOf(" ", slash);
  const whole = text.slice(blank + 1);
  if (blank > 0 && findUnit(whole) !== undefined) return { name: text.slice(0, blank).trim(), unit: whole };
  const isUnit = findUnit(unit) !== undefined && (unit.length > 1 || /[VsK%]/.test(unit));
  return isUnit ? { name: text.slice(0, slash).trim(), unit: unit.trim() } : null;
}
