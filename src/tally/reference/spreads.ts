/** How far engines of one kind differ, quantity by quantity (spreads.json); each can be changed in a reference file. */
import table from "./spreads.json" with { type: "json" };

export type KindSpread = {
  readonly unknown: string;
  /** key of the assumption that is the spread among all engines */
  readonly of: string;
  /** null: nothing in common */
  readonly spread: number | null;
  readonly unit: string;
  readonly reason: string;
};

export const SPREADS: ReadonlyMap<string, KindSpread> = new Map(table.spreads.map((row) => [row.unknown, row]));
