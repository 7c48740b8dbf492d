/**
 * The air that a computer dosing by pressure believes in, where it is recorded. It is no witness of the air; but it is exactly
 * what the fuel was dosed by, and so turns trims and lambda into one.
 *
 * Rule    air per stroke only. Calculated and absolute load restate it, scaled in ways that vary, and are never used
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { find, type Measured } from "./readings.ts";

export function ownAir(engine: EngineDescription, point: OperatingPoint): Measured | null {
  if (engine.metering !== "pressure") return null;
  const stroke = find(point, "airPerStroke", null);
  if (stroke === null || !(stroke.mean > 0)) return null;
  const speed = find(point, "engineSpeed", null)!;
  return {
    value: (stroke.mean * engine.cylinders * speed.mean) / 2,
    variance: stroke.variance / stroke.mean ** 2 + speed.variance / speed.mean ** 2,
  };
}
