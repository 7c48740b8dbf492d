/** The parameters of the invented cases, as frozen in case-parameters.json. */
import { readFileSync } from "node:fs";

type Weighted = { readonly weight: number };
type Setting = Weighted & { readonly withheld: boolean };
type Range = readonly [low: number, high: number];

export type CauseRow = Weighted & {
  readonly cause: string;
  /** of the size, or of its distance from 1 ("share"); for one engine or for each litre of displacement */
  readonly low: number;
  readonly high: number;
  readonly law: "uniform" | "log" | "share";
  readonly per: "one" | "litre";
  /** 2: either sign is drawn */
  readonly signs: 1 | 2;
  /** families that alone can have it, or cannot */
  readonly only?: readonly string[];
  readonly not?: readonly string[];
};

export type CaseParameters = {
  readonly version: number;
  readonly healthyShare: number;
  readonly pairShare: number;
  readonly ambient: {
    readonly temperature_degC: Range;
    readonly relativeHumidity: Range;
    readonly largestHumidityRatio: number;
  };
  readonly families: readonly (Weighted & { readonly family: string; readonly altitude_m: Range })[];
  readonly variants: readonly (Setting & { readonly variant: string })[];
  readonly geometries: readonly (Setting & {
    readonly geometry: string;
    readonly cylinders: number;
    readonly scale: number;
  })[];
  readonly drivers: readonly (Setting & { readonly driver: string })[];
  readonly recorders: readonly (Weighted & { readonly recorder: string })[];
  readonly causes: readonly CauseRow[];
};

export const CASE_PARAMETERS: CaseParameters = JSON.parse(
  readFileSync(new URL("./case-parameters.json", import.meta.url), "utf8"),
);
