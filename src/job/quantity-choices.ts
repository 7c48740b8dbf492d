/** What a column may be pinned to, for a form: each quantity with the units it may be given in, the usual one first. */
import { QUANTITIES } from "../channels/index.ts";
import { findUnit, unitsOf } from "../quantities/index.ts";
import { EDGE_UNIT } from "./outcome/timeline.ts";

export type QuantityChoice = {
  readonly id: string;
  readonly name: string;
  readonly units: readonly string[];
  readonly banked: boolean;
};

export function quantityChoices(): QuantityChoice[] {
  return QUANTITIES.map(({ id, name, unit, bank }) => {
    const usual = EDGE_UNIT[unit] ?? unit;
    const dimension = findUnit(usual)?.dimension;
    const others =
      dimension === undefined
        ? []
        : unitsOf(dimension)
            .map((u) => u.symbol)
            .filter((symbol) => symbol !== usual);
    return { id, name, units: [usual, ...others], banked: bank };
  });
}
