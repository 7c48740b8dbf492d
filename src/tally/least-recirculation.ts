/**
 * On a diesel the air meter follows its set-point while the EGR valve moves, so at one speed and pressure the recirculated
 * share may be anything between none and half, from moment to moment. Pressure then bounds the fresh air, and only where
 * recirculation is shut, or least, does it say how much there is.
 *
 * Rule   the pressure witness is kept where the valve is commanded shut. Where no command is recorded: the steady point of
 *        each region of speed and load at which pressure and meter come closest, and of those the nearest two fifths (at least
 *        four): there the valve was most likely shut. Elsewhere pressure is set aside.
 */

import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { find } from "./readings.ts";
import { commandedShut, mayRecirculate } from "./recirculation.ts";
import type { WitnessRow } from "./witness-row.ts";

const NEAREST_SHARE = 0.4;
const AT_LEAST = 4;
/** sd of ln(pressure/meter) beyond which a point is too unsteady to be judged */
const STEADY = 0.04;
/** readings of pressure and meter that a trend needs to be seen: a charge pipe that fills looks like a meter that over-reads */
const READINGS = 4;

export function setPressureAside(
  engine: EngineDescription,
  points: readonly OperatingPoint[],
  rows: readonly WitnessRow[],
): void {
  if (engine.ignition !== "compression" || !mayRecirculate(engine)) return;
  const kept = points.some(commandedShut) ? shutPoints(points) : leastPoints(points, rows);
  rows.forEach((row, i) => {
    if (row.y.has("meter") && !kept.has(i)) row.y.delete("pressure");
  });
}

function shutPoints(points: readonly OperatingPoint[]): Set<number> {
  return new Set(points.map((_, i) => i).filter((i) => commandedShut(points[i]!)));
}

function leastPoints(points: readonly OperatingPoint[], rows: readonly WitnessRow[]): Set<number> {
  const excess = (i: number) => rows[i]!.y.get("pressure")! - rows[i]!.y.get("meter")!;
  const least = new Map<string, number>();
  rows.forEach((row, i) => {
    if (!row.y.has("pressure") || !row.y.has("meter") || !isSteady(points[i]!, row)) return;
    const present = least.get(points[i]!.region);
    if (present === undefined || excess(i) < excess(present)) least.set(points[i]!.region, i);
  });
  const sorted = [...least.values()].sort((a, b) => excess(a) - excess(b));
  return new Set(sorted.slice(0, Math.max(AT_LEAST, Math.ceil(NEAREST_SHARE * sorted.length))));
}

function isSteady(point: OperatingPoint, row: WitnessRow): boolean {
  const readings = [
    find(point, "manifoldPressure", null),
    find(point, "meterFlow", null) ?? find(point, "meterVoltage", null),
  ];
  if (readings.some((r) => r !== null && r.samples < READINGS)) return false;
  let variance = 0;
  for (const { variance: own, effect } of row.shared)
    if (effect.has("pressure") || effect.has("meter")) variance += own;
  return Math.sqrt(variance) <= STEADY;
}
