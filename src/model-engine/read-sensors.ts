/** What the sensors of the plant read: with their errors, planted biases and lags. */
import { idealMoistAirDensity } from "../gas/index.ts";
import { ASSUMED_CALIBRATION_AIR, type Compensation } from "../meters/index.ts";
import type { MeterDesign } from "./engine-design.ts";
import { readingOf, signalAt } from "./meter-response.ts";
import type { Plant } from "./plant.ts";
import { pulsationShare } from "./planted-laws.ts";
import type { PreparedEngine } from "./prepared-engine.ts";

export function readSensors(e: PreparedEngine, plant: Plant, dt: number): void {
  const { sensors, air } = plant;
  const { parts } = e.engine;
  sensors.speed = plant.speed;
  const { aboutAmbient, aboutZero } = e.faults.pressureScale;
  const pressed = air.pressure2 + aboutAmbient * (air.pressure2 - e.ambient.pressure) + aboutZero * air.pressure2;
  sensors.pressure = pressed + parts.pressureBias + e.faults.pressureBias;
  sensors.barometer = e.ambient.pressure + parts.barometerBias + e.faults.barometerBias;
  const place = {
    meter: plant.intakeTemperature,
    manifold: air.temperature2,
    "after-cooler": air.temperature1,
  }[e.design.intakeTemperatureAt];
  const wanted = place + parts.temperatureBias + e.faults.temperatureBias;
  sensors.intakeTemperature += (wanted - sensors.intakeTemperature) * (1 - Math.exp(-dt / 4));
  sensors.coolant = plant.coolant;
  for (const [i, bank] of plant.banks.entries()) sensors.lambdas[i] = bank.exhaust.atProbe + e.banks[i]!.lambdaBias;
  if (e.meter === null) return;
  if (plant.crank === null) followMeter(e, plant, plant.meterFlow, dt); // by crank angle it has heard every step of the duct
  sensors.meterReading = readingOf(e.meter, plant.meterSignal, assumedDensity(e.meter.design, sensors));
}

/** The meter's signal after `dt` of a flow through it, kg/s; backward flow is felt as the kind feels it. */
export function followMeter(e: PreparedEngine, plant: Plant, flow: number, dt: number): void {
  if (e.meter === null) return;
  const { air } = plant;
  const { design } = e.meter;
  const felt = flow * pulsationShare(e.faults.pulsation, plant.speed, air.pressure2 / air.pressure1);
  const density = e.meter.law.densityExponent === 0 ? 1 : densityAtMeter(e, plant);
  const forward = signalAt(e.meter, felt, density);
  // a film tells direction, everything else takes backward flow for forward
  const signal = flow < 0 && design.kind === "hot-film" ? 2 * e.meter.atRest - forward : forward;
  followSignal(plant, design, signal, dt);
}

/** The meter sits behind the filter: its air has lost the filter's drop. */
function densityAtMeter(e: PreparedEngine, plant: Plant): number {
  return idealMoistAirDensity({
    pressure: e.ambient.pressure - e.air.filterResistance * plant.meterFlow ** 2,
    temperature: plant.intakeTemperature,
    humidityRatio: e.ambient.humidityRatio,
  });
}

/** Heated and vortex meters lag by the first order; a vane swings by the second (meters/vane/vane-dynamics, stepped backward). */
function followSignal(plant: Plant, design: MeterDesign, wanted: number, dt: number): void {
  if (design.kind !== "vane") {
    plant.meterSignal += (wanted - plant.meterSignal) * (1 - Math.exp(-dt / design.lag));
    return;
  }
  const { angularFrequency: w, dampingRatio: z, closedRatio, openRatio } = design;
  const push = w * w * (wanted - plant.meterSignal);
  plant.meterSignalRate = (plant.meterSignalRate + dt * push) / (1 + 2 * z * w * dt + (w * dt) ** 2);
  const moved = plant.meterSignal + dt * plant.meterSignalRate;
  plant.meterSignal = Math.min(Math.max(moved, Math.min(closedRatio, wanted)), Math.max(openRatio, wanted));
  if (plant.meterSignal !== moved) plant.meterSignalRate = 0;
}

/** Heated meters need none; the others are corrected for what the computer measures, and take the air of calibration for the rest. */
function assumedDensity(design: MeterDesign, sensors: Plant["sensors"]): number {
  if (design.kind !== "vane" && design.kind !== "vortex") return 1;
  const corrected = (what: "temperature" | "pressure") => corrects(design.compensation, what);
  return idealMoistAirDensity({
    pressure: corrected("pressure") ? sensors.barometer : ASSUMED_CALIBRATION_AIR.pressure,
    temperature: corrected("temperature") ? sensors.intakeTemperature : ASSUMED_CALIBRATION_AIR.temperature,
    humidityRatio: 0,
  });
}

function corrects(compensation: Compensation, what: "temperature" | "pressure"): boolean {
  return compensation === what || compensation === "temperature-and-pressure";
}
