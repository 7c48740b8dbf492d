/**
 * What `airtally meter` answers (format "airtally-meter/1", one kind a sub-command), as the pages and the text draw it. Units
 * stand in the names; a signal is in the unit named beside it. The schema is meter/result/; a test holds both equal. The file holds types only,
 * so that every edge may read it.
 */
export type MeterKindName = "vane" | "vortex" | "hot-wire" | "hot-film";
export type SignalUnitName = "V" | "Hz" | "ms" | "ratio";
export type CompensationName = "none" | "temperature" | "pressure" | "temperature-and-pressure";

/** Where a value was taken from, in the order in which it is looked for. */
export type Origin = "stated" | "engine file" | "curve" | "assumed";

export type MeterAir = {
  readonly pressure_kPa: number;
  readonly temperature_degC: number;
  readonly relativeHumidity: number;
  readonly density_kg_per_m3: number;
  readonly pressureFrom: Origin;
  readonly temperatureFrom: Origin;
};

/** Air at which a curve was taken. */
export type CurveAir = {
  readonly pressure_kPa: number;
  readonly temperature_degC: number;
  readonly assumed: boolean;
};

export type MeterIdentity = {
  readonly file: string;
  /** null where the curve file does not say and nobody else did */
  readonly kind: MeterKindName | null;
  readonly signalUnit: SignalUnitName;
  /** what the flow column of the curve holds */
  readonly measures: "mass" | "volume";
  /** "points", or the name of the law */
  readonly law: string;
  readonly signalFrom: number;
  readonly signalTo: number;
  readonly air: CurveAir;
};

export type MeterWarning = { readonly code: string; readonly text: string };

type Head<Kind extends string> = {
  readonly format: "airtally-meter/1";
  readonly kind: Kind;
  readonly toolVersion: string;
  /** one sentence: what comes out */
  readonly headline: string;
  readonly warnings: readonly MeterWarning[];
};

export type BudgetShare = { readonly name: string; readonly share: number };

/** The curve in the air at the meter, close enough to be drawn. */
export type DrawnPoint = {
  readonly signal: number;
  readonly massFlow_g_per_s: number;
  readonly low90_g_per_s: number | null;
  readonly high90_g_per_s: number | null;
};

export type ConvertedRow = {
  readonly signal: number | null;
  readonly massFlow_g_per_s: number | null;
  readonly volumeFlow_L_per_s: number | null;
  /** "no-flow": this signal has no flow; "no-signal": no signal of this meter gives the flow */
  readonly where: "inside" | "below" | "above" | "no-flow" | "no-signal";
  readonly sd_g_per_s: number | null;
  readonly low90_g_per_s: number | null;
  readonly high90_g_per_s: number | null;
  /** shares of the variance, largest first */
  readonly budget: readonly BudgetShare[];
};

export type MeterConversion = Head<"convert"> & {
  readonly meter: MeterIdentity;
  readonly air: MeterAir;
  /** from signals to flows */
  readonly signals: readonly ConvertedRow[];
  /** from flows back to signals */
  readonly flows: readonly ConvertedRow[];
  readonly drawing: readonly DrawnPoint[];
};

export type CurveSheetRow = DrawnPoint & {
  readonly volumeFlow_L_per_s: number;
  /** change of flow for a unit of signal */
  readonly slope_g_per_s: number;
  /** per cent of flow for one per cent of signal; null at zero flow */
  readonly sensitivity: number | null;
};

/** The curve as the engine file takes it ("meters", "curve"). */
export type EngineFileCurve = {
  readonly signalUnit: SignalUnitName;
  readonly flowUnit: "g/s" | "L/s";
  readonly at?: { readonly pressure: string; readonly temperature: string } | undefined;
  readonly points: readonly (readonly [number, number])[];
};

export type MeterFactsSheet = {
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

export type LawParameter = { readonly name: string; readonly value: number };

export type CurveSheet = Head<"curve"> & {
  readonly meter: MeterIdentity;
  readonly air: MeterAir;
  readonly parameters: readonly LawParameter[];
  readonly points: readonly DrawnPoint[];
  readonly rows: readonly CurveSheetRow[];
  readonly drawing: readonly DrawnPoint[];
  readonly facts: MeterFactsSheet | null;
  readonly engineFileCurve: EngineFileCurve;
};

export type AmbientReading = {
  readonly readingOverTruth: number | null;
  /** lambda that comes of it over the lambda meant, before closed-loop correction; null with the reading */
  readonly lambdaRatio: number | null;
};

export type CompensatedReading = AmbientReading & { readonly compensation: CompensationName };
export type OpeningReading = AmbientReading & { readonly opening: number };

export type AmbientRow = {
  readonly altitude_m: number | null;
  readonly pressure_kPa: number;
  readonly temperature_degC: number;
  readonly relativeHumidity: number;
  readonly readings: readonly CompensatedReading[];
};

export type TiltRow = {
  /** added closing torque over the full spring torque */
  readonly torqueError: number;
  /** null where the torque was stated and no angle */
  readonly tilt_deg: number | null;
  readonly readings: readonly OpeningReading[];
};

export type AmbientSheet = Head<"ambient"> & {
  readonly file: string | null;
  readonly meterKind: MeterKindName;
  readonly facts: MeterFactsSheet;
  readonly curveAir: CurveAir;
  /** what the engine computer corrects; one column each */
  readonly compensations: readonly CompensationName[];
  readonly altitude: readonly AmbientRow[];
  readonly heat: readonly AmbientRow[];
  readonly humidity: readonly AmbientRow[];
  /** empty for a meter that has no flap */
  readonly tilt: readonly TiltRow[];
};

export type FitPoint = {
  readonly signal: number;
  readonly flow: number;
  readonly sd: number;
  readonly fitted: number;
  /** (fitted - flow) over its effective uncertainty */
  readonly residual: number;
};

export type FitLaw = {
  readonly name: string;
  readonly weight: number;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly parameters: readonly {
    readonly name: string;
    readonly estimate: number;
    readonly standardError: number;
  }[];
};

export type FitRow = {
  readonly signal: number;
  readonly flow: number;
  readonly low90: number;
  readonly high90: number;
};

export type FitSheet = Head<"fit"> & {
  readonly file: string;
  readonly from: "points" | "bench sheet";
  readonly signalUnit: SignalUnitName;
  readonly flowUnit: "g/s" | "L/s";
  /** null where the points do not say */
  readonly air: CurveAir | null;
  readonly points: readonly FitPoint[];
  /** the one taken first */
  readonly laws: readonly FitLaw[];
  readonly rejected: readonly { readonly name: string; readonly reason: string }[];
  /** how many times larger the scatter is than stated; 1 where it is not */
  readonly birgeRatio: number;
  readonly rows: readonly FitRow[];
  /** as airtally-curve/1, SI */
  readonly curve: { readonly [key: string]: unknown };
  /** null where the fitted curve cannot stand as a meter's curve; a warning then says why */
  readonly engineFileCurve: EngineFileCurve | null;
};

export type BenchSheetRow = {
  readonly row: number;
  readonly signal: number;
  readonly pressure_kPa: number;
  readonly temperature_degC: number;
  readonly pressureDrop_kPa: number | null;
  readonly humidityRatio: number;
  readonly flow_g_per_s: number;
  readonly sd_g_per_s: number;
  readonly expanded95_g_per_s: number;
  readonly budget: readonly (BudgetShare & { readonly sd_g_per_s: number })[];
  /** limits of the reference's standard that this row breaks */
  readonly outside: readonly string[];
};

export type BenchSheetResult = Head<"bench"> & {
  readonly file: string;
  readonly reference: string;
  readonly signalUnit: SignalUnitName;
  readonly air: CurveAir | null;
  readonly rows: readonly BenchSheetRow[];
};

export type MeterResult = MeterConversion | CurveSheet | AmbientSheet | FitSheet | BenchSheetResult;
