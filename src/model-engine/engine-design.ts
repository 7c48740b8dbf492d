/** The drawing of a model engine: what its maker knows and its engine computer assumes. SI; all invented. */
import type { FuelName } from "../engine/index.ts";
import type { Compensation } from "../meters/index.ts";

export type EngineDesign = {
  readonly note: string;
  /** m3, all cylinders */
  readonly displacement: number;
  readonly cylinders: number;
  /** two: each with injectors, trims and a probe of its own; one where not given */
  readonly banks?: 1 | 2;
  readonly compressionRatio: number;
  readonly fuel: FuelName;
  readonly ignition: "spark" | "compression";
  readonly injection: "port" | "direct";
  /** 1/s */
  readonly idleSpeed: number;
  readonly largestSpeed: number;
  /** [speed 1/s, volumetric efficiency by the state in the manifold, exhaust as high as the manifold] */
  readonly breathing: readonly (readonly [number, number])[];
  /** of the residual gas in the breathing of this kind of engine: 1 = ideal cycle */
  readonly residualStrength: number;
  readonly intake: {
    /** Pa lost in filter and duct at the largest flow */
    readonly filterDrop: number;
    /** Pa lost in the cooler at the largest flow */
    readonly coolerDrop: number;
    /** m3 before the throttle (from the meter on) and behind it */
    readonly chargeVolume: number;
    readonly manifoldVolume: number;
    /** m */
    readonly throttleBore: number;
  };
  readonly charger: Charger | null;
  readonly exhaust: {
    /** Pa over ambient at the largest flow, without a turbine */
    readonly pressureRise: number;
    /** m3 between valves and probe */
    readonly volumeToProbe: number;
  };
  /** m2 effective when fully open; a spark engine sets it by position, a diesel by its meter */
  readonly egrValveArea: number | null;
  readonly meter: MeterDesign | null;
  readonly manifoldSensor: {
    readonly reference: number;
    readonly points: readonly (readonly [volts: number, pascal: number])[];
  } | null;
  readonly intakeTemperatureAt: "meter" | "manifold" | "after-cooler";
  readonly injectors: {
    /** m3/s of fuel at `atPressure` across one injector */
    readonly flow: number;
    readonly atPressure: number;
    /** s at 14 V */
    readonly deadTime: number;
    /** what `atPressure` is measured against; the manifold where not given. Against ambient the computer corrects by its pressure sensor. */
    readonly pressureReference?: "manifold" | "ambient";
  };
  readonly lambdaProbe: "none" | "narrow" | "wide";
  readonly computer: {
    readonly dosedBy: "meter" | "pressure" | "both" | "pedal";
    /** fraction, of each trim */
    readonly trimLimit: number;
    /** lambda commanded at full load */
    readonly fullLoadLambda: number;
  };
  /** kg m2, crankshaft, flywheel, clutch */
  readonly inertia: number;
};

export type Charger = {
  /** boost pressure ratio the wastegate allows */
  readonly largestRatio: number;
  /** share of the largest flow at which that ratio is reached */
  readonly spooledAt: number;
  /** s */
  readonly lag: number;
  /** isentropic efficiency of the compressor, and effectiveness of the cooler behind it */
  readonly efficiency: number;
  readonly coolerEffectiveness: number;
};

export type MeterDesign = HeatedDesign | VaneDesign | VortexDesign;

/** A hot wire or film in its tube, by King's law V2 = A + B m^n through its ends. */
export type HeatedDesign = {
  readonly kind: "hot-wire" | "hot-film";
  readonly bore: number;
  readonly reference: number;
  readonly voltageAtRest: number;
  readonly largestVoltage: number;
  /** kg/s at the largest voltage */
  readonly largestFlow: number;
  /** s, first-order lag of the heated element [common practice, no source] */
  readonly lag: number;
};

/** A spring-loaded vane whose opening grows with the logarithm of the flow, and a wiper on it. */
export type VaneDesign = {
  readonly kind: "vane";
  readonly bore: number;
  readonly reference: number;
  readonly closedRatio: number;
  readonly openRatio: number;
  /** kg/s in the air of calibration where the vane begins to open, and where it is fully open */
  readonly smallestFlow: number;
  readonly largestFlow: number;
  /** rad/s and 1, of flap, spring and damping chamber [common practice, no source] */
  readonly angularFrequency: number;
  readonly dampingRatio: number;
  readonly compensation: Compensation;
};

/** A vortex-counting meter: pulses for each volume. */
export type VortexDesign = {
  readonly kind: "vortex";
  readonly bore: number;
  /** 1/m3 */
  readonly pulsesPerVolume: number;
  /** kg/s in the air of calibration: below, nothing is shed; the largest metered */
  readonly smallestFlow: number;
  readonly largestFlow: number;
  readonly lag: number;
  readonly compensation: Compensation;
};
