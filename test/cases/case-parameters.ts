/** The parameters of the invented cases, as frozen in case-parameters.json. */
import table from "./case-parameters.json" with { type: "json" };

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
  /** what the engine must have to have it */
  readonly needs?: "egr valve" | "fuel held against the manifold";
  /** on an engine with two banks it may be one bank's alone */
  readonly ofOneBank?: boolean;
};

export type CaseParameters = {
  readonly version: number;
  readonly healthyShare: number;
  readonly pairShare: number;
  /** of the causes that one bank can have alone, on engines with two */
  readonly oneBankShare: number;
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
    readonly banks: 1 | 2;
    readonly scale: number;
  })[];
  readonly drivers: readonly (Setting & { readonly driver: string })[];
  readonly recorders: readonly (Weighted & { readonly recorder: string })[];
  /** of a tester: s for one request and its answer, drawn by its logarithm */
  readonly requestTime_s: Range;
  readonly loggerRates: readonly (Weighted & { readonly rate_Hz: number })[];
  readonly styles: readonly (Weighted & { readonly style: string })[];
  readonly causes: readonly CauseRow[];
};

// JSON knows neither tuples nor literal types: draw-case.slow.test.ts reads every row.
export const CASE_PARAMETERS = table as unknown as CaseParameters;
