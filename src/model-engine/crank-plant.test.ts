/**
 * The same plant, engine computer, meter and faults with cylinders by crank angle and cycle-averaged. Stated tolerance, idle to full
 * load: air into the cylinders 2.5 % (at a shut throttle 1.5 %), manifold pressure 3.5 %, trims 0.015, shifts by a fault 0.02.
 * Not compared: the temperature of the gas in the manifold (residual gas that flows back warms it by crank angle; cycle-averaged
 * it is counted in the efficiency), and what pulsation does to a meter wide open at low speed, which is why the variant exists.
 */
import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { drawnByCrank } from "./crank-air.ts";
import { buildEngine, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { ambientAt } from "./model-engine.ts";
import { prepareEngine } from "./prepared-engine.ts";
import { type Protocol, rpm } from "./protocol.ts";
import { runEngine } from "./run-engine.ts";
import type { Trace, TraceColumn } from "./trace.ts";

const engine = buildEngine(drawnByCrank(PETROL_WITH_METER), 1, 0);
const ambient = ambientAt({ altitude: 0, temperature: 293, relativeHumidity: 0.4 });
const PROTOCOL: Protocol = [
  { do: "idle", seconds: 9 },
  { do: "drive", seconds: 6, speed: rpm(2500), load: 0.7, ramp: 1 },
  { do: "drive", seconds: 4, speed: rpm(4500), load: 1, ramp: 1 },
];
const PARTS = { idle: [6, 9], cruise: [12, 15], full: [17.5, 19] } as const;
type Part = keyof typeof PARTS;

function run(byCrank: boolean, faults: readonly Fault[], protocol = PROTOCOL): Trace {
  return runEngine(prepareEngine(engine, ambient, faults), protocol, { random: seededRandom(5), byCrank });
}

function mean(t: Trace, part: Part, column: TraceColumn): number {
  const [from, to] = PARTS[part].map((time) => Math.round(time / t.step));
  return t[column].subarray(from, to).reduce((sum, x) => sum + x, 0) / (to! - from!);
}

const trim = (t: Trace, part: Part) => Math.log1p(mean(t, part, "shortTrim")) + Math.log1p(mean(t, part, "longTrim"));
const apart = (a: Trace, b: Trace, part: Part, column: TraceColumn) =>
  Math.abs(mean(a, part, column) / mean(b, part, column) - 1);

describe("the plant with cylinders by crank angle", () => {
  const averaged = run(false, []);
  const crank = run(true, []);

  it("agrees with the cycle-averaged plant: air, pressure, meter, mixture and trims", () => {
    for (const part of ["idle", "cruise", "full"] as const) {
      expect(apart(crank, averaged, part, "airIntoCylinders"), part).toBeLessThan(part === "idle" ? 0.015 : 0.025);
      expect(apart(crank, averaged, part, "manifoldPressure"), part).toBeLessThan(0.035);
      expect(Math.abs(mean(crank, part, "meterReading") / mean(crank, part, "meterFlow") - 1), part).toBeLessThan(0.01);
      expect(apart(crank, averaged, part, "lambda"), part).toBeLessThan(0.01);
    }
    for (const part of ["idle", "cruise"] as const) {
      expect(Math.abs(trim(crank, part) - trim(averaged, part)), part).toBeLessThan(0.015);
    }
  });

  it("tells a fault as the cycle-averaged plant does: what a leak takes from the meter, and the trim that makes up for it", () => {
    const leak: readonly Fault[] = [{ cause: "manifold-leak", size: 3 }];
    const idle: Protocol = [{ do: "idle", seconds: 9 }];
    const missed = (byCrank: boolean, healthy: Trace) => {
      const t = run(byCrank, leak, idle);
      const log = (of: Trace) => Math.log(mean(of, "idle", "meterReading") / mean(of, "idle", "airIntoCylinders"));
      return { meter: log(t) - log(healthy), trim: trim(t, "idle") - trim(healthy, "idle") };
    };
    const byCrank = missed(true, crank);
    const inTheMean = missed(false, averaged);
    expect(byCrank.meter).toBeLessThan(-0.1);
    expect(Math.abs(byCrank.meter - inTheMean.meter)).toBeLessThan(0.02);
    expect(Math.abs(byCrank.trim - inTheMean.trim)).toBeLessThan(0.02);
  });

  it("is the same to the bit when run again", () => {
    const short: Protocol = [{ do: "idle", seconds: 1.5 }];
    const once = run(true, [], short);
    expect(run(true, [], short).airIntoCylinders).toEqual(once.airIntoCylinders);
  });
});
