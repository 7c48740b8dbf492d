/**
 * The area of the throttle that its recorded opening suggests.
 *
 * Equation    x = (reading - closed)/(open - closed),  A = C A_plate(x) + A_b
 * Symbols     closed: lowest reading of the job less 0.02, 0.16 at most; open 0.85 or the highest reading | C 0.85 | A_b m2 idle
 *             bypass and leakage
 * Validity    spark ignition, opening recorded, and near its stop somewhere. The scale of the opening is not known to better than that
 * Source      [heywood1988] App. C; readings of 10 to 18 % when closed and the coefficients: common practice, no source
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { throttleArea } from "../meters/index.ts";
import { find } from "./readings.ts";

const CLOSED_AT_MOST = 0.16;
const BELOW_LOWEST = 0.02;
const OPEN_AT_LEAST = 0.85;
/** a "throttle" that never comes near its stop in a job with idle is no opening */
const LOWEST_AT_MOST = 0.35;
const DISCHARGE = 0.85;
/** rad from across the bore */
const CLOSED_ANGLE = (7 * Math.PI) / 180;
/** m and m3: a usual bore for a usual engine, where none is stated */
const USUAL_BORE = 0.06;
const USUAL_DISPLACEMENT = 2e-3;
/** m2 for 2 L: leakage past the plate alone, and with an idle valve half open */
const LEAKAGE = 1.5e-6;
const IDLE_VALVE = 10e-6;
/** of the opening, for its slope */
const STEP = 0.002;

export type PlateOpening = {
  /** m2 effective, bypass included; d ln(area)/d(reading); share of the area that is bypass. Null where not read */
  at(point: OperatingPoint): { readonly area: number; readonly openingEffect: number; readonly bypass: number } | null;
  /** the bypass may change from moment to moment: a mechanical throttle with an idle valve that nobody recorded */
  readonly bypassVaries: boolean;
};

export function plateOpening(engine: EngineDescription, points: readonly OperatingPoint[]): PlateOpening | null {
  if (engine.ignition !== "spark") return null;
  const known = points.flatMap((point) => openingOf(point)?.mean ?? []);
  const lowest = Math.min(...known);
  if (known.length === 0 || lowest > LOWEST_AT_MOST) return null;
  const closed = Math.min(Math.max(lowest - BELOW_LOWEST, 0), CLOSED_AT_MOST);
  const travel = Math.max(OPEN_AT_LEAST, ...known) - closed;
  const scale = engine.displacement / USUAL_DISPLACEMENT;
  const bore = engine.throttleBore ?? USUAL_BORE * Math.sqrt(scale);
  const plate = { bore, shaft: 0, closedAngle: CLOSED_ANGLE };
  const ofPlate = (reading: number) => {
    const opened = Math.min(1, Math.max(0, (reading - closed) / travel));
    return DISCHARGE * throttleArea(plate, CLOSED_ANGLE + opened * (Math.PI / 2 - CLOSED_ANGLE));
  };
  const bypassVaries = !points.some((p) => has(p, "pedalPosition") || has(p, "throttleCommanded") || has(p, "idleAir"));
  return {
    bypassVaries,
    at: (point) => {
      const opening = openingOf(point);
      if (opening === null) return null;
      const valve = find(point, "idleAir", null);
      const bypass = scale * (LEAKAGE + (valve !== null ? 2 * valve.mean * IDLE_VALVE : bypassVaries ? IDLE_VALVE : 0));
      const area = ofPlate(opening.mean) + bypass;
      const openingEffect = Math.log((ofPlate(opening.mean + STEP) + bypass) / area) / STEP;
      return { area, openingEffect, bypass: bypass / area };
    },
  };
}

export function openingOf(point: OperatingPoint) {
  return find(point, "throttlePosition", null) ?? find(point, "throttleRelative", null);
}

function has(point: OperatingPoint, quantity: "pedalPosition" | "throttleCommanded" | "idleAir"): boolean {
  return find(point, quantity, null) !== null;
}
