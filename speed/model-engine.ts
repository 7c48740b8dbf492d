/**
 * Speed of the model engine on one core. Goals: cycle-averaged with engine computer and recorder at least 1,000 times real time;
 * by crank angle at least 300 engine cycles a second of four cylinders. Best of three; fixed seeds, the answer asserted.
 *
 * Run by `npm run speed`.
 */
import {
  ambientAt,
  buildEngine,
  crankResistances,
  crankSettings,
  drawnByCrank,
  FAMILIES,
  newCrankEngine,
  PETROL_WITH_METER,
  prepareEngine,
  rpm,
  runCrankCycle,
  runEngine,
  simulateFamily,
} from "../src/model-engine/index.ts";
import { seededRandom } from "../src/numerics/index.ts";

const GOAL_TIMES_REAL = 1000;
const GOAL_CYCLES = 300;
const ROUNDS = 3;
const CYCLES = 150;

function bestSeconds(run: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    run();
    best = Math.min(best, (performance.now() - start) / 1000);
  }
  return best;
}

let missed = false;
for (const family of FAMILIES) {
  let recorded = 0;
  const seconds = bestSeconds(() => {
    const { truth } = simulateFamily({ family, seed: 3, driving: 900 });
    if (!truth.airIntoCylinders.every(Number.isFinite)) throw new Error(`${family}: the truth is not finite`);
    recorded = truth.rows * truth.step;
  });
  const times = recorded / seconds;
  if (times < GOAL_TIMES_REAL) missed = true;
  console.log(`${family}: ${times.toFixed(0)} times real time (the drive that teaches the trims not counted)`);
}

const ambient = ambientAt({ altitude: 0, temperature: 293.15, relativeHumidity: 0 });
for (const speed of [rpm(800), rpm(2500), rpm(5500)]) {
  const seconds = bestSeconds(() => {
    const engine = newCrankEngine(PETROL_WITH_METER, ambient, crankResistances(PETROL_WITH_METER, 0.11), 90e3);
    const settings = crankSettings(PETROL_WITH_METER, speed, 2.4e-3);
    let flow = 0;
    for (let i = 0; i < CYCLES; i++) flow = runCrankCycle(engine, settings).cylinderFlow;
    if (!(flow > 0.005 && flow < 0.2)) throw new Error(`by crank angle: ${flow} kg/s is no flow of this engine`);
  });
  const cycles = CYCLES / seconds;
  if (cycles < GOAL_CYCLES) missed = true;
  console.log(`by crank angle, four cylinders at ${(speed * 60).toFixed(0)} rev/min: ${cycles.toFixed(0)} cycles/s`);
}
const engine = buildEngine(drawnByCrank(PETROL_WITH_METER), 1);
const HELD = 10; // s
const held = [{ do: "drive", seconds: HELD, speed: rpm(2500), load: 0.6 }] as const;
const coupledSeconds = bestSeconds(() => {
  const trace = runEngine(prepareEngine(engine, ambient, []), held, {
    random: seededRandom(1),
    learn: false,
    byCrank: true,
  });
  if (!(trace.airIntoCylinders[trace.rows - 1]! > 0.015)) throw new Error("the plant by crank angle draws too little");
});
const coupled = (HELD * rpm(2500)) / 2 / coupledSeconds;
if (coupled < GOAL_CYCLES) missed = true;
console.log(`by crank angle with engine computer, meter and driver at 2500 rev/min: ${coupled.toFixed(0)} cycles/s`);
console.log(missed ? "MISSED" : `goals ${GOAL_TIMES_REAL} times real time, ${GOAL_CYCLES} cycles/s: met`);
process.exitCode = missed ? 1 : 0;
