/** What each kind of meter, and each other witness, senses, is blind to and how it fails, in words for people (meter-facts.json). */
import type { MeterKind } from "../engine/index.ts";
import table from "./meter-facts.json" with { type: "json" };

export type OtherWitness = "manifold-pressure" | "throttle" | "fuel-side" | "exhaust";

export type MeterFacts = {
  readonly name: string;
  readonly senses: string;
  readonly blindTo: readonly string[];
  /** what altitude, temperature and humidity do */
  readonly weather: string;
  readonly orientation: string;
  readonly supply: string;
  readonly response: string;
  readonly fails: readonly string[];
};

export function meterFacts(kind: MeterKind | OtherWitness): MeterFacts {
  return table.kinds[kind];
}
