/** The patterns of patterns.json: which concepts of a name make which quantity. */
import { assert, type Dimension } from "../../quantities/index.ts";
import { QUANTITIES, type QuantityId } from "../quantity-id.ts";
import table from "./patterns.json" with { type: "json" };

export type Pattern = {
  readonly quantity: QuantityId;
  /** all of them; of each group one */
  readonly needs: readonly (readonly string[])[];
  /** may stand beside */
  readonly also: readonly string[];
  /** rules it out */
  readonly not: readonly string[];
  /** how sure the words alone make it */
  readonly base: number;
  /** the pattern holds only if a unit of this dimension is stated */
  readonly unit: Dimension | null;
};

type Row = {
  readonly needs: string;
  readonly also?: string;
  readonly not?: string;
  readonly base?: number;
  readonly unit?: string;
};

const lists = new Map<string, string>(Object.entries(table.lists));

export const PATTERNS: readonly Pattern[] = Object.entries(table.quantities).flatMap(([id, rows]) =>
  rows.map((row) => patternOf(id, row)),
);

function patternOf(id: string, row: Row): Pattern {
  const quantity = QUANTITIES.find((q) => q.id === id)?.id;
  assert(quantity !== undefined, `patterns.json names no quantity ${id}`);
  return {
    quantity: quantity as QuantityId,
    needs: row.needs.split(" ").map((group) => group.split("|")),
    also: wordsOf(row.also ?? ""),
    not: wordsOf(row.not ?? ""),
    base: row.base ?? 1,
    unit: (row.unit ?? null) as Dimension | null,
  };
}

function wordsOf(text: string): string[] {
  return text
    .split(" ")
    .flatMap((word) => (lists.get(word) ?? word).split(" "))
    .filter((word) => word !== "");
}
