/** The quantities a channel can be (quantity-table.ts), as a type and as a look-up. */
import type { SiUnit } from "../quantities/index.ts";
import { QUANTITY_TABLE } from "./quantity-table.ts";

export type QuantityId = (typeof QUANTITY_TABLE)[number]["id"];

export type QuantityInfo = {
  readonly id: QuantityId;
  readonly unit: SiUnit;
  readonly low: number;
  readonly high: number;
  readonly name: string;
  readonly bank: boolean;
};

export const QUANTITIES: readonly QuantityInfo[] = QUANTITY_TABLE.map((row) => ({
  id: row.id,
  unit: row.unit,
  low: row.low,
  high: row.high,
  name: row.name,
  bank: "bank" in row,
}));

const byId = new Map<QuantityId, QuantityInfo>(QUANTITIES.map((q) => [q.id, q]));

export function quantityInfo(id: QuantityId): QuantityInfo {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`Assertion failed: no quantity ${id}`);
  return found;
}
