/**
 * The references a flow bench can have, each from its readings to mass flow of moist air, with its own stated uncertainty.
 *
 * Validity    see the files of the devices; what is broken is named in `outside`
 * Source      [iso5167-1], [iso9300], [cfr1065]; a master meter brings its own certificate
 * Check       published/iso5167.test.ts, published/cfr1065.test.ts, published/iso9300.test.ts
 */
import {
  airViscosity,
  criticalNozzleFlow,
  type DifferentialPressureDevice,
  differentialPressureFlow,
  moistAirDensity,
  venturiFlowCoefficient,
  venturiMassFlow,
  waterMoleFraction,
} from "../../gas/index.ts";
import { assert, GAMMA_AIR, MOLAR_MASS_DRY_AIR, MOLAR_MASS_WATER } from "../../quantities/index.ts";

export type ReferenceDevice =
  | { readonly kind: "differential-pressure"; readonly device: DifferentialPressureDevice }
  | {
      readonly kind: "venturi";
      readonly throatDiameter: number;
      readonly inletDiameter: number;
      readonly dischargeCoefficient: number;
      /** relative, standard, of the discharge coefficient by its calibration */
      readonly dischargeUncertainty: number;
    }
  | { readonly kind: "critical-nozzle"; readonly throat: "toroidal" | "cylindrical"; readonly throatDiameter: number }
  | {
      readonly kind: "master-meter";
      /** standard, of the flow its reading stands for */
      readonly relativeUncertainty: number;
    };

export type ReferenceReading = {
  /** Pa absolute, before the device */
  readonly pressure: number;
  readonly temperature: number;
  /** Pa over the device; for a critical nozzle not used, for a master meter zero */
  readonly pressureDrop: number;
  readonly humidityRatio: number;
  /** kg/s, of a master meter alone */
  readonly masterFlow?: number;
};

export type ReferenceFlow = {
  readonly massFlow: number;
  readonly ownUncertainty: readonly { readonly name: string; readonly relative: number }[];
  readonly outside: readonly string[];
};

/** `boreScale` moves the bore of the device for the budget: 1 as built. */
export function referenceFlow(device: ReferenceDevice, reading: ReferenceReading, boreScale: number): ReferenceFlow {
  const { pressure, temperature, pressureDrop, humidityRatio } = reading;
  switch (device.kind) {
    case "differential-pressure": {
      const flow = differentialPressureFlow(
        { ...device.device, boreDiameter: device.device.boreDiameter * boreScale },
        {
          upstreamPressure: pressure,
          pressureDrop,
          upstreamDensity: moistAirDensity(reading),
          viscosity: airViscosity(temperature),
          gamma: GAMMA_AIR,
        },
      );
      const { dischargeCoefficient, expansibility } = flow.uncertainty;
      return {
        massFlow: flow.massFlow,
        ownUncertainty: [
          { name: "discharge coefficient", relative: dischargeCoefficient },
          { name: "expansibility", relative: expansibility },
        ],
        outside: flow.outside,
      };
    }
    case "venturi": {
      const throat = device.throatDiameter * boreScale;
      const shape = { diameterRatio: throat / device.inletDiameter, gamma: GAMMA_AIR };
      const massFlow = venturiMassFlow({
        dischargeCoefficient: device.dischargeCoefficient,
        flowCoefficient: venturiFlowCoefficient(1 - pressureDrop / pressure, shape),
        throatArea: (Math.PI / 4) * throat ** 2,
        inletPressure: pressure,
        inletTemperature: temperature,
        molarMass: moistMolarMass(humidityRatio),
      });
      return {
        massFlow,
        ownUncertainty: [{ name: "discharge coefficient", relative: device.dischargeUncertainty }],
        outside: [],
      };
    }
    case "critical-nozzle": {
      const nozzle = { throat: device.throat, throatDiameter: device.throatDiameter * boreScale };
      const flow = criticalNozzleFlow(nozzle, { pressure, temperature });
      // to first order the flow of a choked gas goes with the root of its molar mass
      const moisture = Math.sqrt(moistMolarMass(humidityRatio) / MOLAR_MASS_DRY_AIR);
      return {
        massFlow: flow.massFlow * moisture,
        ownUncertainty: [{ name: "discharge coefficient", relative: flow.relativeStandardUncertainty }],
        outside: flow.outside,
      };
    }
    case "master-meter":
      return {
        massFlow: masterFlowOf(reading),
        ownUncertainty: [{ name: "master meter", relative: device.relativeUncertainty }],
        outside: [],
      };
  }
}

/** The sheet refuses a row without it before it comes here. */
function masterFlowOf(reading: ReferenceReading): number {
  assert(reading.masterFlow !== undefined, "a master meter's row has its flow");
  return reading.masterFlow;
}

function moistMolarMass(humidityRatio: number): number {
  const water = waterMoleFraction(humidityRatio);
  return (1 - water) * MOLAR_MASS_DRY_AIR + water * MOLAR_MASS_WATER;
}
