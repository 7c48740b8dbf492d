/** What a cell looks like before anything is known of its column; used by the sniffer only. */
import { findUnit } from "../../quantities/index.ts";
import { type DateOrder, parseTime, type TimeForm } from "../time/parse-time.ts";
import { parseCell } from "./cell.ts";
import { PLAIN } from "./number-format.ts";

export type CellKind = "empty" | "number" | "missing" | "text" | TimeForm;

const NUMBER = /^[+-\u2212]?(?:\d(?:[\d.,' \u00a0\u202f]*\d)?[.,]?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
const NUMBER_AND_WORD = /^([+-\u2212]?(?:\d(?:[\d.,]*\d)?|[.,]\d+))\s*([^\d\s].{0,13})$/;

export function kindOfCell(cell: string, order: DateOrder): CellKind {
  const text = cell.trim();
  if (text === "") return "empty";
  if (/^1\/[a-z]/i.test(text)) return "text"; // 1/min is a unit
  if (NUMBER.test(text)) return dateKind(text, order) ?? "number";
  const glued = NUMBER_AND_WORD.exec(text);
  if (glued?.[2] !== undefined && findUnit(glued[2]) !== undefined) return "number";
  if (parseCell(text, PLAIN).kind === "missing") return "missing";
  return timeKind(text, order) ?? "text";
}

/** 24.11.2026 is made of digits and points, and still no number. */
function dateKind(text: string, order: DateOrder): CellKind | null {
  return /^\d{1,4}\.\d{1,2}\.\d{2,4}$/.test(text) && isTime(text, "date", order) ? "date" : null;
}

function timeKind(text: string, order: DateOrder): CellKind | null {
  if (!/^[+-]?\d/.test(text)) return null;
  const forms: TimeForm[] = ["clock", "date", "date-time"];
  return forms.find((form) => isTime(text, form, order)) ?? null;
}

function isTime(text: string, form: TimeForm, order: DateOrder): boolean {
  const bytes = Uint8Array.from(text, (c) => Math.min(c.charCodeAt(0), 255));
  return !Number.isNaN(parseTime(bytes, 0, bytes.length, form, order));
}
