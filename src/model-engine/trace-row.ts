/** One row of the trace from the state of the plant. */
import { absoluteLoad } from "../engine/index.ts";
import type { Demand } from "./driver.ts";
import { narrowProbeVoltage } from "./exhaust-gas.ts";
import { shownShort } from "./fuel-trims.ts";
import type { Plant } from "./plant.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { throttleOpening } from "./throttle-plate.ts";
import type { Trace } from "./trace.ts";
import { lookUp } from "./uniform-table.ts";

/** m of road a revolution, in the middle gear of an invented car */
const ROAD_PER_REVOLUTION = 0.55;

export function writeRow(e: PreparedEngine, trace: Trace, row: number, plant: Plant, demand: Demand): void {
  const { air, flows, sensors, computer, governor } = plant;
  trace.time[row] = row * trace.step;
  trace.segment[row] = demand.segment;
  trace.speed[row] = plant.speed;
  trace.roadSpeed[row] = demand.mode === "held" ? plant.speed * ROAD_PER_REVOLUTION : 0;
  trace.pressureBeforeThrottle[row] = air.pressure1;
  trace.manifoldPressure[row] = air.pressure2;
  trace.chargeTemperature[row] = air.temperature2;
  trace.exhaustPressure[row] = plant.exhaustPressure;
  trace.meterFlow[row] = plant.meterFlow;
  trace.throttleFlow[row] = flows.throttle;
  trace.purgeFlow[row] = plant.purgeFlow;
  trace.leakFlow[row] = flows.leak - plant.purgeFlow;
  trace.egrFlow[row] = flows.egr;
  trace.leakBeforeThrottleFlow[row] = flows.suction - plant.meterFlow;
  trace.boostLeakFlow[row] = flows.boostLeak;
  trace.recirculatedFlow[row] = plant.recirculated;
  trace.airIntoCylinders[row] = plant.dryAir;
  trace.storage[row] = plant.storage;
  trace.fuelFlow[row] = plant.fuelIntoCylinders;
  trace.lambda[row] = plant.lambda;

  trace.meterSignal[row] = plant.meterSignal;
  trace.meterReading[row] = sensors.meterReading;
  trace.pressureReading[row] = sensors.pressure;
  trace.boostReading[row] = air.pressure1 + e.engine.parts.barometerBias;
  trace.barometerReading[row] = sensors.barometer;
  trace.intakeTemperatureReading[row] = sensors.intakeTemperature;
  trace.ambientTemperatureReading[row] = e.ambient.temperature;
  trace.coolantReading[row] = sensors.coolant;
  const second = plant.banks.length - 1; // of an engine with one bank: the same again
  trace.lambdaReading[row] = sensors.lambdas[0]!;
  trace.lambdaReading2[row] = sensors.lambdas[second]!;
  trace.independentLambdaReading[row] = plant.banks[0]!.exhaust.atProbe + e.engine.parts.independentLambdaBias;
  trace.probeVoltage[row] = narrowProbeVoltage(sensors.lambdas[0]!);
  trace.probeVoltage2[row] = narrowProbeVoltage(sensors.lambdas[second]!);
  trace.throttleReading[row] = 0.12 + 0.72 * throttleOpening(e.design.intake.throttleBore, governor.throttleArea);
  trace.pedalReading[row] = 0.15 + 0.7 * (demand.load ?? 0);
  trace.batteryVoltage[row] = plant.battery;

  trace.shortTrim[row] = shortTrimOf(e, plant, 0);
  trace.longTrim[row] = computer.trims[0]!.long[computer.cell]!;
  trace.shortTrim2[row] = shortTrimOf(e, plant, second);
  trace.longTrim2[row] = computer.trims[second]!.long[computer.cell]!;
  trace.lambdaCommanded[row] = computer.lambdaCommanded;
  trace.loopState[row] = computer.loop;
  trace.pulseWidth[row] = plant.pulseWidth;
  trace.fuelRateReported[row] = computer.doses.reduce((sum, dose) => sum + dose, 0) / e.fuelDensity;
  trace.airReported[row] = computer.airDosedBy;
  trace.egrCommanded[row] = computer.egrOpening;
  trace.purgeCommanded[row] = computer.purge;
  const running = plant.speed > 3;
  trace.absoluteLoad[row] = running
    ? absoluteLoad({
        massFlow: computer.airDosedBy,
        displacement: e.design.displacement,
        engineSpeed: plant.speed,
      })
    : 0;
  trace.calculatedLoad[row] = running ? Math.min(1, trace.absoluteLoad[row]! / fullLoad(e, plant.speed)) : 0;
}

function shortTrimOf(e: PreparedEngine, plant: Plant, bank: number): number {
  const { computer, sensors } = plant;
  if (computer.loop !== 2 || computer.closedFor <= 1) return 0;
  return shownShort(computer.trims[bank]!, {
    probe: e.design.lambdaProbe === "wide" ? "wide" : "narrow",
    lambdaRead: sensors.lambdas[bank]!,
    lambdaCommanded: computer.lambdaCommanded,
  });
}

/** Absolute load at full load and this speed, as the computer's table has it. */
function fullLoad(e: PreparedEngine, speed: number): number {
  return (lookUp(e.breathing.drawn, speed) * (e.design.charger?.largestRatio ?? 1) * e.ambient.pressure) / 106e3;
}
