/** What each kind of meter senses, is blind to and how it fails, in words for people (meter-facts.json). */
import type { MeterKind } from "../engine/index.ts";
import table from "./meter-facts.json" with { type: "json" };

export type MeterFacts = {
  readonly name: string;
  readonly senses: string;
  readonly blindTo: readonly string[];
  readonly orientation: string;
  readonly supply: string;
  readonly response: string;
  readonly fails: readonly string[];
};

export function meterFacts(kind: MeterKind): MeterFacts {
  return table.kinds[kind];
}
