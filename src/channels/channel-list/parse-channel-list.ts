/** A channel list from its file; every key, word and unit checked, the nearest known one named. */
import { type Failure, failure, type Result, success } from "../../quantities/index.ts";
import { QUANTITIES, type QuantityId } from "../quantity-id.ts";
import { unitMeaning } from "../recognition/unit-meaning.ts";
import { CHANNEL_LIST_FORMAT, type ChannelList, type ChannelPin } from "./channel-list.ts";
import { nearestKey } from "./nearest-key.ts";

export type ChannelListReason = "not-json" | "wrong-format" | "unknown-key" | "unknown-word" | "wrong-type";

const TOP_KEYS = ["format", "note", "channels"];
const PIN_KEYS = ["column", "header", "quantity", "unit", "bank", "ignore", "note", "confidence", "asRecognised"];
const INFORMATIVE = "confidence and asRecognised are written for the reader and may be left out";

export function parseChannelList(text: string): Result<ChannelList, ChannelListReason> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const where = error instanceof SyntaxError ? ` (${error.message})` : "";
    return failure(
      "not-json",
      `The channel list is not valid JSON${where}.`,
      "Write a list with --channels-out and edit that.",
    );
  }
  if (!isObject(json)) return wrongType("The channel list", "an object in braces");
  const unknown = unknownKey(json, TOP_KEYS, "the channel list");
  if (unknown !== null) return unknown;
  if (json.format !== CHANNEL_LIST_FORMAT) {
    return failure(
      "wrong-format",
      `The format is ${JSON.stringify(json.format)}, not "${CHANNEL_LIST_FORMAT}".`,
      `Write "format": "${CHANNEL_LIST_FORMAT}".`,
    );
  }
  if (!Array.isArray(json.channels)) return wrongType('"channels"', "a list in square brackets");
  const channels: ChannelPin[] = [];
  for (const [i, entry] of json.channels.entries()) {
    const pin = parsePin(entry, `entry ${i + 1} of "channels"`);
    if (!pin.ok) return pin;
    channels.push(pin.value);
  }
  return success({ note: typeof json.note === "string" ? json.note : null, channels });
}

function parsePin(entry: unknown, place: string): Result<ChannelPin, ChannelListReason> {
  if (!isObject(entry)) return wrongType(place, "an object in braces");
  const unknown = unknownKey(entry, PIN_KEYS, place);
  if (unknown !== null) return unknown;
  const { column, header, quantity, unit, bank, ignore } = entry;
  if (column !== undefined && !(typeof column === "number" && Number.isInteger(column) && column >= 1)) {
    return wrongType(`"column" in ${place}`, "the number of a column, 1 for the first");
  }
  if (header !== undefined && typeof header !== "string") return wrongType(`"header" in ${place}`, "a text");
  if (column === undefined && header === undefined) return wrongType(place, 'an entry with "column" or "header"');
  if (bank !== undefined && bank !== null && bank !== 1 && bank !== 2)
    return wrongType(`"bank" in ${place}`, "1, 2 or null");
  if (ignore !== undefined && typeof ignore !== "boolean") return wrongType(`"ignore" in ${place}`, "true or false");
  if (unit !== undefined && unit !== null && (typeof unit !== "string" || unitMeaning(unit) === null)) {
    return failure(
      "unknown-word",
      `${JSON.stringify(unit)} in ${place} is no known unit.`,
      'Write for example "kPa", "degC", "g/s" or "%".',
    );
  }
  const chosen = quantityOf(quantity, ignore === true, place);
  if (!chosen.ok) return chosen;
  return success({
    column: column ?? null,
    header: header ?? null,
    quantity: chosen.value,
    unit: typeof unit === "string" ? unit : null,
    bank: bank === 1 || bank === 2 ? bank : null,
  });
}

function quantityOf(quantity: unknown, ignored: boolean, place: string): Result<QuantityId | null, ChannelListReason> {
  if (ignored || quantity === null) return success(null);
  const ids = QUANTITIES.map((q) => q.id);
  const found = ids.find((id) => id === quantity);
  if (found !== undefined) return success(found);
  if (quantity === undefined) return wrongType(place, 'an entry with "quantity" or "ignore": true');
  const near = typeof quantity === "string" ? nearestKey(quantity, ids) : null;
  return failure(
    "unknown-word",
    `${JSON.stringify(quantity)} in ${place} is no known quantity.`,
    near === null ? "Use one of the names that --channels-out writes." : `Did you mean "${near}"?`,
  );
}

function unknownKey(
  object: Record<string, unknown>,
  known: readonly string[],
  place: string,
): Failure<ChannelListReason> | null {
  const key = Object.keys(object).find((k) => !known.includes(k));
  if (key === undefined) return null;
  const near = nearestKey(key, known);
  return failure(
    "unknown-key",
    `Unknown key "${key}" in ${place}.`,
    near === null ? `Known keys: ${known.join(", ")} (${INFORMATIVE}).` : `Did you mean "${near}"?`,
  );
}

function wrongType(what: string, wanted: string): Failure<ChannelListReason> {
  return failure("wrong-type", `${what} must be ${wanted}.`, "Write a list with --channels-out and edit that.");
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
