/**
 * What the values of a quantity usually look like on a road engine, and which units they come in when none is written,
 * likeliest first (SAE J1979 scaling, then common practice). `usual` is in SI and wide: most samples lie inside, a wrong
 * unit puts them outside. Common practice, no source.
 */
import { fromSi, unit } from "../../quantities/index.ts";
import type { QuantityId } from "../quantity-id.ts";

export type Expectation = { readonly units: readonly string[]; readonly usual: readonly [number, number] };

const TEMPERATURE = ["degC", "degF", "K"];
const PRESSURE = ["kPa", "hPa", "bar", "psi", "inHg", "Pa", "mmHg"];
const SHARE = ["%", "1"];
const FLOW = ["g/s", "kg/h", "lb/min", "kg/s"];

export const EXPECTATIONS: Readonly<Record<QuantityId, Expectation>> = {
  time: { units: ["s"], usual: [0, 1e9] },
  engineSpeed: { units: ["1/min", "Hz"], usual: [0, 150] },
  vehicleSpeed: { units: ["km/h", "mile/h", "m/s"], usual: [0, 75] },
  meterFlow: { units: FLOW, usual: [0, 0.5] },
  meterVolumeFlow: { units: ["L/s", "m3/h", "L/min"], usual: [0, 0.4] },
  meterVoltage: { units: ["V", "mV"], usual: [0, 6] },
  meterFrequency: { units: ["Hz", "kHz"], usual: [5, 16_000] },
  meterPeriod: { units: ["us", "ms"], usual: [5e-5, 0.2] },
  meterRatio: { units: ["1", "%"], usual: [0, 1] },
  meterReference: { units: ["V"], usual: [4, 14] },
  manifoldPressure: { units: PRESSURE, usual: [10e3, 350e3] },
  manifoldPressureVoltage: { units: ["V", "mV"], usual: [0.1, 5.2] },
  boostPressure: { units: PRESSURE, usual: [50e3, 400e3] },
  barometer: { units: PRESSURE, usual: [60e3, 106e3] },
  exhaustPressure: { units: PRESSURE, usual: [60e3, 600e3] },
  intakeTemperature: { units: TEMPERATURE, usual: [233, 400] },
  chargeTemperature: { units: TEMPERATURE, usual: [233, 450] },
  ambientTemperature: { units: TEMPERATURE, usual: [233, 325] },
  coolantTemperature: { units: TEMPERATURE, usual: [233, 393] },
  oilTemperature: { units: TEMPERATURE, usual: [233, 425] },
  fuelTemperature: { units: TEMPERATURE, usual: [233, 390] },
  exhaustTemperature: { units: TEMPERATURE, usual: [243, 1373] },
  catalystTemperature: { units: TEMPERATURE, usual: [243, 1373] },
  throttlePosition: { units: SHARE, usual: [0, 1] },
  throttleCommanded: { units: SHARE, usual: [0, 1] },
  throttleRelative: { units: SHARE, usual: [0, 1] },
  throttleVoltage: { units: ["V", "mV"], usual: [0.1, 5.1] },
  idleAir: { units: SHARE, usual: [0, 1] },
  pedalPosition: { units: SHARE, usual: [0, 1] },
  shortTrim: { units: SHARE, usual: [-0.5, 0.5] },
  longTrim: { units: SHARE, usual: [-0.5, 0.5] },
  totalTrim: { units: SHARE, usual: [-0.5, 0.5] },
  lambda: { units: ["1"], usual: [0.6, 10] },
  lambdaIndependent: { units: ["1"], usual: [0.6, 10] },
  lambdaCommanded: { units: ["1"], usual: [0.5, 10] },
  probeVoltage: { units: ["V", "mV"], usual: [0, 1.3] },
  probeVoltageAfter: { units: ["V", "mV"], usual: [0, 1.3] },
  probeCurrent: { units: ["mA", "A"], usual: [-0.01, 0.01] },
  loopState: { units: ["1"], usual: [0, 16] },
  calculatedLoad: { units: SHARE, usual: [0, 1] },
  absoluteLoad: { units: SHARE, usual: [0, 3] },
  airPerStroke: { units: ["mg", "g"], usual: [2e-5, 4e-3] },
  airPerStrokeSetPoint: { units: ["mg", "g"], usual: [2e-5, 4e-3] },
  meterFlowSetPoint: { units: FLOW, usual: [0, 0.5] },
  fuelRate: { units: ["L/h", "L/min", "cm3/min"], usual: [0, 3e-5] },
  fuelMassRate: { units: ["g/s", "kg/h"], usual: [0, 0.03] },
  fuelPerStroke: { units: ["mg"], usual: [0, 3e-4] },
  pulseWidth: { units: ["ms", "us", "s"], usual: [0, 0.04] },
  injectorDuty: { units: SHARE, usual: [0, 1] },
  fuelPressure: { units: ["kPa", "bar", "MPa", "psi"], usual: [1e5, 2.6e8] },
  fuelPressureSetPoint: { units: ["kPa", "bar", "MPa", "psi"], usual: [1e5, 2.6e8] },
  alcoholShare: { units: SHARE, usual: [0, 1] },
  ignitionAdvance: { units: ["deg"], usual: [-0.7, 1.05] },
  knockRetard: { units: ["deg"], usual: [-0.35, 0.35] },
  camIntake: { units: ["deg"], usual: [-1.3, 1.6] },
  camExhaust: { units: ["deg"], usual: [-1.3, 1.6] },
  egrCommanded: { units: SHARE, usual: [0, 1] },
  egrError: { units: SHARE, usual: [-1, 1] },
  egrPosition: { units: SHARE, usual: [0, 1] },
  purge: { units: SHARE, usual: [0, 1] },
  wastegate: { units: SHARE, usual: [0, 1] },
  boostSetPoint: { units: PRESSURE, usual: [50e3, 400e3] },
  turboSpeed: { units: ["1/min"], usual: [0, 5000] },
  batteryVoltage: { units: ["V", "mV"], usual: [6, 16] },
  alternatorLoad: { units: SHARE, usual: [0, 1] },
  acState: { units: ["1"], usual: [0, 1] },
  fuelCut: { units: ["1"], usual: [0, 1] },
  idleState: { units: ["1"], usual: [0, 1] },
  gear: { units: ["1"], usual: [-1, 12] },
  runTime: { units: ["s", "min", "h"], usual: [0, 1e6] },
  fuelLevel: { units: SHARE, usual: [0, 1] },
  odometer: { units: ["km", "mile", "m"], usual: [0, 2e9] },
  torque: { units: ["N m"], usual: [-300, 1500] },
  power: { units: ["kW", "W"], usual: [-1e5, 7e5] },
  misfireCount: { units: ["1"], usual: [0, 1e5] },
  troubleCodeCount: { units: ["1"], usual: [0, 127] },
  humidity: { units: SHARE, usual: [0, 1] },
  carbonMonoxide: { units: ["%"], usual: [0, 0.1] },
  carbonDioxide: { units: ["%"], usual: [0, 0.17] },
  oxygen: { units: ["%"], usual: [0, 0.22] },
  hydrocarbons: { units: ["ppm"], usual: [0, 0.01] },
  nitrogenOxides: { units: ["ppm"], usual: [0, 0.005] },
  equivalenceRatioCommanded: { units: ["1"], usual: [0.2, 2] },
};

/** An SI value in the unit a person reads, for messages. */
export function inUsualUnit(quantity: QuantityId, value: number): string {
  const u = unit(EXPECTATIONS[quantity].units[0]!);
  const number = Number(fromSi(value, u).toPrecision(4));
  return u.symbol === "1" ? `${number}` : `${number} ${u.symbol}`;
}
