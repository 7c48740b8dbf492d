/** Which column is which quantity: pinned by the user, else the likeliest candidate if it is likely enough. */
import { failure, type Result, success, type Warning } from "../quantities/index.ts";
import type { RawColumn } from "../recording/index.ts";
import type { ChannelList, ChannelPin } from "./channel-list/channel-list.ts";
import type { ChannelReason } from "./channel-reason.ts";
import type { UnrecognisedColumn } from "./channel-set.ts";
import { type QuantityId, quantityInfo } from "./quantity-id.ts";
import { type Candidate, candidatesFor } from "./recognition/candidates.ts";
import { conversionFor } from "./recognition/conversion.ts";
import type { Conversion, Surroundings } from "./recognition/conversion-types.ts";
import { firstLook } from "./recognition/first-look.ts";
import type { Summary } from "./recognition/summary.ts";
import { unitMeaning } from "./recognition/unit-meaning.ts";

export type Assignment = {
  readonly column: RawColumn;
  readonly summary: Summary;
  readonly quantity: QuantityId;
  readonly bank: 1 | 2 | null;
  readonly conversion: Conversion;
  readonly confidence: number;
  readonly reasons: readonly string[];
};

export type Assigned = {
  readonly assignments: readonly Assignment[];
  readonly unrecognised: readonly UnrecognisedColumn[];
  readonly warnings: readonly Warning[];
};

/** Below this the tool asks instead of guessing. */
export const CONFIDENT = 0.6;
/** A second candidate this near to the first makes the choice a guess. */
const CLEARLY_BETTER = 0.05;

export function assignColumns(
  columns: readonly RawColumn[],
  pins: ChannelList | null,
  around: Omit<Surroundings, "habits">,
  file: string,
): Result<Assigned, ChannelReason> {
  const pinned = pinsByColumn(columns, pins, file);
  if (!pinned.ok) return pinned;
  const { around: known, summaries } = firstLook(columns, around);
  const assignments: Assignment[] = [];
  const unrecognised: UnrecognisedColumn[] = [];
  const warnings: Warning[] = [];
  for (const [i, column] of columns.entries()) {
    const summary = summaries[i]!;
    const pin = pinned.value.get(column);
    if (pin !== undefined) {
      if (pin.quantity === null) unrecognised.push(leftOut(column, [], "left out by the channel list"));
      else {
        const assignment = byPin(column, summary, pin, pin.quantity, known, file);
        if (!assignment.ok) return assignment;
        assignments.push(assignment.value);
      }
      continue;
    }
    // A leading or trailing delimiter on every line leaves a column without name and values.
    if (summary.count === 0 && column.headerText === "") continue;
    if (summary.count === 0) {
      unrecognised.push(leftOut(column, [], "holds no numbers"));
      continue;
    }
    const candidates = candidatesFor(column, summary, known);
    const [best, second] = candidates;
    const close = second !== undefined && best !== undefined && best.confidence - second.confidence < CLEARLY_BETTER;
    if (best === undefined || best.confidence < CONFIDENT || (close && best.confidence < 0.8)) {
      unrecognised.push(leftOut(column, candidates, whyNot(best, second, close)));
      continue;
    }
    assignments.push({ column, summary, ...best });
    warnings.push(...contradictions(column, best));
  }
  return success({ assignments, unrecognised, warnings });
}

function whyNot(best: Candidate | undefined, second: Candidate | undefined, close: boolean): string {
  if (best === undefined) return "no quantity fits its name";
  if (close && second !== undefined && best.confidence >= CONFIDENT) {
    return `could be ${quantityInfo(best.quantity).name} or ${quantityInfo(second.quantity).name}: say which in a channel list`;
  }
  return `perhaps ${quantityInfo(best.quantity).name}, not sure enough (${best.reasons.join("; ")})`;
}

function leftOut(column: RawColumn, candidates: readonly Candidate[], reason: string): UnrecognisedColumn {
  return {
    column: column.position,
    header: column.headerText,
    unitText: column.unitText,
    candidates: candidates.slice(0, 3).map(({ quantity, confidence }) => ({ quantity, confidence })),
    reason,
  };
}

/** Recognised, but a part of the evidence speaks against it: the user should see that. */
function contradictions(column: RawColumn, best: Candidate): Warning[] {
  const against = best.reasons.filter((reason) => /but its values|is not known|out of range/.test(reason));
  return against.map((reason) => ({
    code: "unit-contradiction",
    text: `"${column.headerText}" (column ${column.position}), taken as ${quantityInfo(best.quantity).name}: ${reason}.`,
  }));
}

function byPin(
  column: RawColumn,
  summary: Summary,
  pin: ChannelPin,
  quantity: QuantityId,
  around: Surroundings,
  file: string,
): Result<Assignment, ChannelReason> {
  const unitText = pin.unit ?? column.unitText;
  const meaning = unitText === null ? null : unitMeaning(unitText);
  const said = {
    unit: meaning,
    words: pin.unit === "open flag" ? "open" : column.header,
    vacuum: false,
    pinned: pin.unit !== null,
  };
  const conversion = conversionFor(quantity, said, summary, around);
  if (conversion === null) {
    return failure(
      "pin-contradiction",
      `Column ${column.position} ("${column.headerText}") is pinned as ${quantityInfo(quantity).name}, but its unit "${unitText}" is no unit of that.`,
      `Give a unit in the channel list, for example "${quantityInfo(quantity).unit}".`,
      { file, column: column.position },
    );
  }
  const reasons = ["pinned by the channel list", ...conversion.reasons];
  return success({ column, summary, quantity, bank: pin.bank, conversion, confidence: 1, reasons });
}

function pinsByColumn(
  columns: readonly RawColumn[],
  pins: ChannelList | null,
  file: string,
): Result<Map<RawColumn, ChannelPin>, ChannelReason> {
  const found = new Map<RawColumn, ChannelPin>();
  for (const pin of pins?.channels ?? []) {
    const named = columns.filter((column) => pin.header === null || sameHeader(column, pin.header));
    const column =
      named.find((candidate) => candidate.position === pin.column) ??
      (pin.column === null || pin.header !== null ? named[0] : undefined);
    if (column === undefined) {
      if (pin.quantity === null) continue;
      const what = [
        pin.header === null ? null : `"${pin.header}"`,
        pin.column === null ? null : `number ${pin.column}`,
      ];
      return failure(
        "pin-without-column",
        `The channel list pins ${what.filter((part) => part !== null).join(", ")} as ${pin.quantity}, but the recording has no such column.`,
        "Correct the header or number in the channel list, or take the entry out.",
        { file },
      );
    }
    const before = found.get(column);
    if (before !== undefined && before.quantity !== pin.quantity) {
      return failure(
        "pin-contradiction",
        `The channel list says two things of column ${column.position} ("${column.headerText}"): ${before.quantity ?? "ignore"} and ${pin.quantity ?? "ignore"}.`,
        "Keep one of the two entries.",
        { file, column: column.position },
      );
    }
    found.set(column, pin);
  }
  return success(found);
}

function sameHeader(column: RawColumn, header: string): boolean {
  const wanted = header.trim();
  return column.headerText.trim() === wanted || column.header === wanted;
}
