/**
 * The time loop: driver, sensors, engine computer, governor, air, fuel, exhaust, crankshaft, one after another in steps of 20 ms.
 * Before the recording the engine has been driven for a while (`learningDrive`), so that the long trims know its faults.
 */

import type { SeededRandom } from "../numerics/index.ts";
import { newCrankAir } from "./crank-air.ts";
import { stepDiesel } from "./diesel-control.ts";
import { driverOf } from "./driver.ts";
import { stepComputer } from "./engine-computer.ts";
import { stepGovernor } from "./governor.ts";
import { newPlant, type Plant } from "./plant.ts";
import type { PreparedEngine } from "./prepared-engine.ts";
import { type Protocol, protocolDuration, rpm } from "./protocol.ts";
import { readSensors } from "./read-sensors.ts";
import { stepPlant } from "./step-plant.ts";
import { newTrace, type Trace } from "./trace.ts";
import { writeRow } from "./trace-row.ts";

export const STEP = 0.02; // s

/** `byCrank`: cylinders by crank angle instead of cycle-averaged; slower, and the meter hears the pulsation. */
export type RunOptions = { readonly random: SeededRandom; readonly learn?: boolean; readonly byCrank?: boolean };

export function runEngine(e: PreparedEngine, protocol: Protocol, options: RunOptions): Trace {
  const plant = newPlant(e);
  if (options.learn !== false && e.design.computer.dosedBy !== "pedal") {
    drive(e, plant, learningDrive(e), { random: options.random.fork("learning"), learningTime: 1.5 });
  }
  if (options.byCrank === true) plant.crank = newCrankAir(e); // the drive that teaches is cycle-averaged
  const trace = newTrace(Math.round(protocolDuration(protocol) / STEP), STEP);
  drive(e, plant, protocol, { random: options.random.fork("driver"), trace });
  return trace;
}

function drive(
  e: PreparedEngine,
  plant: Plant,
  protocol: Protocol,
  how: { readonly random: SeededRandom; readonly trace?: Trace; readonly learningTime?: number },
): void {
  const driver = driverOf(protocol, e.design.idleSpeed);
  const rows = how.trace?.rows ?? Math.round(protocolDuration(protocol) / STEP);
  const diesel = e.design.computer.dosedBy === "pedal";
  for (let row = 0; row < rows; row++) {
    const demand = driver.at(row * STEP, plant.speed);
    readSensors(e, plant, STEP);
    stepComputer(e, plant.computer, plant.sensors, demand, STEP, how.learningTime);
    if (diesel) stepDiesel(e, plant.computer, plant.sensors, demand, plant.governor.idleDose, STEP);
    stepGovernor(e, plant.governor, { speed: plant.speed, demand, random: how.random }, STEP);
    stepPlant(e, plant, demand, STEP);
    if (how.trace !== undefined) writeRow(e, how.trace, row, plant, demand);
  }
}

/** Visits the trim cells: idle, loads, no-load speeds, part load at three speeds. Fast learning stands for many miles. */
function learningDrive(e: PreparedEngine): Protocol {
  const boost = e.design.charger?.largestRatio ?? 1;
  const held = [1500, 2500, 3600].flatMap((speed) =>
    [0.42, 0.6, 0.78].map((share) => ({
      do: "drive" as const,
      seconds: 7,
      ramp: 1,
      speed: rpm(speed),
      load: share / boost,
    })),
  );
  return [
    { do: "idle", seconds: 14 },
    { do: "idle", seconds: 9, accessoryTorque: 20 },
    { do: "hold", seconds: 10, speed: rpm(2500) },
    ...held,
    { do: "idle", seconds: 10 },
    { do: "key-on", seconds: 3 }, // the engine runs down and the manifold fills before the recording begins
  ];
}
