/**
 * What is known of the engine, in SI. The engine file (job/engine-file) is the same in the user's words and units.
 * `null` means "not stated": the inference then takes a wider assumption, it never invents a value.
 */
export type MeterKind = "vane" | "vortex" | "hot-wire" | "hot-film";
export type SignalUnit = "V" | "Hz" | "ms" | "ratio";
export type FuelName = "petrol" | "e10" | "e85" | "ethanol" | "methanol" | "lpg" | "cng" | "diesel";

/** Points of (signal, flow): signal in V, Hz, s (from ms) or ratio; flow in kg/s ("mass") or m3/s ("volume"). */
export type MeterCurve = {
  readonly signalUnit: SignalUnit;
  readonly flow: "mass" | "volume";
  readonly points: readonly (readonly [signal: number, flow: number])[];
  /** the air for which a vane's mass column holds; null where not stated */
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
};

export type MeterDescription = {
  readonly id: "meter" | "meter-2";
  readonly kind: MeterKind;
  readonly bank: 1 | 2 | null;
  /** m */
  readonly bore: number | null;
  /** V */
  readonly reference: number | null;
  readonly curve: MeterCurve | null;
};

export type EngineDescription = {
  readonly note: string | null;
  /** m3, all cylinders */
  readonly displacement: number;
  readonly cylinders: number;
  readonly strokes: 4;
  readonly banks: 1 | 2;
  readonly compressionRatio: number | null;
  readonly valveTiming: "fixed" | "variable" | null;
  readonly fuel: FuelName | { readonly stoichiometricAirFuelRatio: number };
  readonly ignition: "spark" | "compression";
  readonly induction: "natural" | "boosted" | null;
  readonly injection: "port" | "direct" | null;
  readonly metering: "meter" | "pressure" | "both" | "pedal" | "unknown";
  readonly meters: readonly MeterDescription[];
  readonly manifoldSensor: {
    readonly reads: "absolute" | "gauge";
    readonly reference: number | null;
    /** [V, Pa] */
    readonly points: readonly (readonly [number, number])[] | null;
  } | null;
  readonly volumetricEfficiency: { readonly value: number; readonly sd: number | null } | null;
  readonly injectors: {
    /** m3/s of fuel at `atPressure` (Pa across the injector) */
    readonly flow: number | null;
    readonly atPressure: number | null;
    /** s */
    readonly deadTime: number | null;
    readonly pressureReference: "manifold" | "ambient" | null;
    readonly pulsesPerCycle: number | null;
  } | null;
  readonly lambdaProbe: "none" | "narrow" | "wide" | null;
  readonly independentProbe: "none" | "narrow" | "wide" | null;
  readonly site: { readonly barometer: number | null; readonly outside: number | null };
  /** fraction, of each trim */
  readonly trimLimits: number | null;
  readonly trims: "multiplied" | "added" | null;
  readonly egr: "none" | "fitted" | null;
  readonly egrControl: "meter" | "position" | "unknown" | null;
  readonly purge: "none" | "fitted" | null;
  readonly secondaryAir: "none" | "fitted" | null;
  readonly intakeTemperatureAt: "meter" | "manifold" | "after-cooler" | null;
  readonly manifoldVolume: number | null;
  readonly chargeVolume: number | null;
  readonly throttleBore: number | null;
};
