/** The physical state at every operating point, from what was recorded and, where not, from stated assumptions. */

import type { OperatingData, OperatingPoint } from "../channels/index.ts";
import {
  type EngineDescription,
  fuelProperties,
  speedDensityFlow,
  stoichiometricAirFuelRatio,
} from "../engine/index.ts";
import { GAS_CONSTANT_DRY_AIR, STANDARD_ATMOSPHERE, ZERO_CELSIUS } from "../quantities/index.ts";
import type { Assumptions } from "./assumptions.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { find, meterReading } from "./readings.ts";
import { HUMIDITY_RATIO, type PointState } from "./tally-model.ts";

/** s, of an injector whose dead time is not stated. Common practice, no source. */
export const ASSUMED_DEAD_TIME = 0.9e-3;
/** K, taken where nobody states the outside temperature */
const OUTSIDE = ZERO_CELSIUS + 20;

export function pointPhysics(
  engine: EngineDescription,
  data: OperatingData,
  slots: readonly MeterSlot[],
  assumptions: Assumptions,
): PointState {
  const { points } = data;
  const k = points.length;
  const array = () => new Float64Array(k).fill(Number.NaN);
  const physics = {
    speed: array(),
    pressure: array(),
    barometer: array(),
    intakeTemperature: array(),
    outsideTemperature: array(),
    air: array(),
    effectivePulse: array(),
    exhaustPressure: array(),
    meterVoltage: array(),
  };
  const meters: { [id in "meter" | "meter-2"]?: Float64Array } = {};
  points.forEach((point, i) => {
    const site = siteOf(engine, data, point.recording);
    physics.speed[i] = find(point, "engineSpeed", null)!.mean;
    physics.barometer[i] =
      find(point, "barometer", null)?.mean ??
      site.barometer ??
      standingBarometer(data, point.recording) ??
      STANDARD_ATMOSPHERE;
    physics.outsideTemperature[i] = find(point, "ambientTemperature", null)?.mean ?? site.outside ?? OUTSIDE;
    physics.intakeTemperature[i] = intakeTemperature(point) ?? physics.outsideTemperature[i]!;
    physics.meterVoltage[i] = find(point, "meterVoltage", null)?.mean ?? Number.NaN;
    const air = {
      pressure: physics.barometer[i]!,
      temperature: physics.intakeTemperature[i]!,
      humidityRatio: HUMIDITY_RATIO,
    };
    for (const slot of slots) {
      const reading = meterReading(point, slot, air);
      if (reading === null) continue;
      meters[slot.id] ??= array();
      meters[slot.id]![i] = reading.value * slot.share;
    }
    const pressure = find(point, "manifoldPressure", null)?.mean ?? Number.NaN;
    const metered = meters.meter?.[i] ?? meters["meter-2"]?.[i] ?? Number.NaN;
    physics.pressure[i] = Number.isNaN(pressure)
      ? pressureFromAir(
          engine,
          assumptions,
          metered,
          physics.speed[i]!,
          physics.intakeTemperature[i]!,
          physics.barometer[i]!,
        )
      : pressure;
    physics.air[i] = Number.isNaN(metered)
      ? airFromPressure(engine, assumptions, physics.pressure[i]!, physics.speed[i]!, physics.intakeTemperature[i]!)
      : metered;
  });
  const flows = [...physics.air].filter((m) => m > 0).sort((a, b) => a - b);
  const largestFlow = flows[flows.length - 1] ?? 0.05;
  const idleFlow = idleFlowOf(points, physics.air) ?? flows[0] ?? 0.003;
  for (let i = 0; i < k; i++) {
    physics.exhaustPressure[i] = physics.barometer[i]! + assumptions.exhaustRise * (physics.air[i]! / largestFlow) ** 2;
    physics.effectivePulse[i] = effectivePulse(
      engine,
      points[i]!,
      physics.air[i]!,
      physics.speed[i]!,
      idleFlow,
      assumptions,
      points,
      physics,
    );
  }
  return {
    ...physics,
    meter: meters,
    meterVoltage: physics.meterVoltage.some((v) => v > 0) ? physics.meterVoltage : null,
    idleFlow,
    largestFlow,
    stoichiometric: stoichiometricAirFuelRatio(engine.fuel),
  };
}

export function intakeTemperature(point: OperatingPoint): number | null {
  return (find(point, "chargeTemperature", null) ?? find(point, "intakeTemperature", null))?.mean ?? null;
}

/** What is stated of the surroundings of one recording. */
export function siteOf(
  engine: EngineDescription,
  { sites }: Pick<OperatingData, "sites">,
  recording: number,
): EngineDescription["site"] {
  return sites?.[recording] ?? engine.site;
}

/** The engine standing is its own barometer: the recorded one, else the manifold sensor's reading; of another day for want of its own. */
function standingBarometer({ keyOn }: OperatingData, recording: number): number | null {
  for (const reading of [...keyOn.filter((r) => r.recording === recording), ...keyOn]) {
    const value = reading.readings.get("barometer") ?? reading.readings.get("manifoldPressure");
    if (value !== undefined && value.mean > 50e3 && value.mean < 110e3) return value.mean;
  }
  return null;
}

function breathing(engine: EngineDescription, assumptions: Assumptions): number {
  return engine.volumetricEfficiency?.value ?? assumptions.breathingMean;
}

function airFromPressure(
  engine: EngineDescription,
  a: Assumptions,
  pressure: number,
  speed: number,
  temperature: number,
): number {
  if (!(pressure > 0)) return Number.NaN;
  return speedDensityFlow({
    manifoldPressure: pressure,
    displacement: engine.displacement,
    engineSpeed: speed,
    chargeTemperature: temperature,
    volumetricEfficiency: breathing(engine, a),
  });
}

function pressureFromAir(
  engine: EngineDescription,
  a: Assumptions,
  air: number,
  speed: number,
  temperature: number,
  barometer: number,
): number {
  if (!(air > 0)) return Number.NaN;
  const full = (engine.displacement * speed) / 2 / (GAS_CONSTANT_DRY_AIR * temperature);
  const pressure = air / (full * breathing(engine, a));
  return engine.induction === "boosted" ? pressure : Math.min(pressure, barometer);
}

/** Mean flow of the idle points; null where the recording has none. */
function idleFlowOf(points: readonly OperatingPoint[], air: Float64Array): number | null {
  let sum = 0;
  let count = 0;
  points.forEach((point, i) => {
    if (point.states.includes("idle") && air[i]! > 0) {
      sum += air[i]!;
      count += 1;
    }
  });
  return count > 0 ? sum / count : null;
}

/** s: recorded pulse less dead time; else from the injectors; else the idle assumption scaled by the air of one cycle. */
function effectivePulse(
  engine: EngineDescription,
  point: OperatingPoint,
  air: number,
  speed: number,
  idleFlow: number,
  a: Assumptions,
  points: readonly OperatingPoint[],
  physics: { readonly speed: Float64Array },
): number {
  const recorded = find(point, "pulseWidth", null)?.mean;
  const deadTime = engine.injectors?.deadTime ?? ASSUMED_DEAD_TIME;
  if (recorded !== undefined && recorded > deadTime) return recorded - deadTime;
  const perCycle = air / (speed / 2) / engine.cylinders / stoichiometricAirFuelRatio(engine.fuel);
  const flow = engine.injectors?.flow ?? null;
  if (flow !== null)
    return perCycle / (flow * fuelProperties(engine.fuel).density) / (engine.injectors?.pulsesPerCycle ?? 1);
  const idle = points.findIndex((p) => p.states.includes("idle"));
  const idleSpeed = idle >= 0 ? physics.speed[idle]! : 800 / 60;
  return (a.idlePulse * (air / speed)) / (idleFlow / idleSpeed);
}
