/**
 * With the throttle wide open and no boost, what is missing between barometer and manifold was lost in filter, duct and throttle.
 *
 * Equation    d = (p_a - p)(m_max/m)^2 - d_0, in kPa at the largest flow; mean over the points, each weighed by its own scatter
 * Symbols     p_a, p Pa barometer and manifold | m kg/s air, m_max largest of the job | d_0 what a sound filter and duct take (assumed)
 * Validity    points at full load whose throttle (or pedal) stands as far open as it ever did, with at least 0.6 of the largest flow;
 *             no charger; the barometer recorded or stated, or read by the manifold sensor itself with the engine standing: then
 *             the sensor's zero drops out
 * Source      turbulent restriction, dp = k m^2/rho; thresholds common practice, no source
 */
import type { OperatingData, OperatingPoint } from "../../channels/index.ts";
import type { EngineDescription } from "../../engine/index.ts";
import type { Assumptions } from "../assumptions.ts";
import { siteOf } from "../point-physics.ts";
import { find } from "../readings.ts";
import type { PointState, StandingObservation } from "../tally-model.ts";

const LEAST_FLOW = 0.6;
/** of the widest opening of the job */
const WIDE_OPEN = 0.92;
/** a widest opening below this was never full load */
const LEAST_OPENING = 0.6;
/** Pa; pulses of the intake that a polled reading catches */
const PULSES = 300;
/** Pa; drift of one sensor between standing and running */
const DRIFT = 150;

type Drop = {
  readonly point: OperatingPoint;
  readonly value: number;
  readonly variance: number;
  readonly scale: number;
};

export function fullLoadDrop(
  data: Pick<OperatingData, "points" | "keyOn" | "sites">,
  engine: EngineDescription,
  physics: PointState,
  a: Assumptions,
  /** how the observation hears the pressure sensor's offset, per kPa of it read high: its column */
  offset: Float64Array,
): StandingObservation[] {
  const { points } = data;
  if (engine.induction === "boosted" || engine.ignition !== "spark") return [];
  if (points.some((_, i) => physics.pressure[i]! > 1.1 * physics.barometer[i]!)) return [];
  const widest = Math.max(...points.map((p) => opening(p) ?? 0));
  const own = !points.some((p) => toldBarometer(p, data, engine));
  const standing = data.keyOn.some((k) => k.readings.has("manifoldPressure"));
  if (widest < LEAST_OPENING || (own && !standing)) return [];
  const drops = points.flatMap((point, i): Drop[] => {
    const pressure = find(point, "manifoldPressure", null);
    const open = (opening(point) ?? 0) >= WIDE_OPEN * widest && point.states.includes("full-load");
    const share = physics.air[i]! / physics.largestFlow;
    if (!open || pressure === null || !(share >= LEAST_FLOW)) return [];
    if (!own && !toldBarometer(point, data, engine)) return [];
    const scale = 1 / share ** 2;
    const scatter = pressure.variance + (find(point, "barometer", null)?.variance ?? 0) + PULSES ** 2;
    return [{ point, value: scale * (physics.barometer[i]! - pressure.mean), variance: scale ** 2 * scatter, scale }];
  });
  if (drops.length === 0) return [];
  const weight = drops.reduce((sum, d) => sum + 1 / d.variance, 0);
  const mean = (of: (d: Drop) => number) => drops.reduce((sum, d) => sum + of(d) / d.variance, 0) / weight;
  const scale = mean((d) => d.scale);
  const shared = scale ** 2 * (own ? DRIFT : a.barometer) ** 2 + a.ductDropSpread ** 2;
  return [
    {
      kind: "full-load-pressure-drop",
      unit: "kPa",
      meter: null,
      reading: (mean((d) => d.value) - a.ductDrop) / 1000,
      variance: (1 / weight + shared) / 1e6,
      basis: offset.map((v) => (own ? 0 : -scale * v)),
      where: drops.map(({ point }) => `recording ${point.recording + 1}, ${point.start.toFixed(0)} s`).join("; "),
      ...(own ? { ownBarometer: true } : {}),
    },
  ];
}

function opening(point: OperatingPoint): number | null {
  const reading =
    find(point, "throttlePosition", null) ??
    find(point, "throttleRelative", null) ??
    find(point, "pedalPosition", null);
  return reading?.mean ?? null;
}

/** Recorded, or stated for the place: by another instrument than the manifold sensor. */
function toldBarometer(point: OperatingPoint, data: Pick<OperatingData, "sites">, engine: EngineDescription): boolean {
  return find(point, "barometer", null) !== null || siteOf(engine, data, point.recording).barometer !== null;
}
