/**
 * The pressure in the pipe before the throttle of a boosted engine.
 *
 * Equation    as recorded; else the root of k A p_1 Psi(p_2/p_1) = (M - L(p_1)) sqrt(R T_1), from p_2 up:
 *             an open plate gives p_1 = p_2, one that holds back tells what is held back;
 *             k = median of M sqrt(R T_1)/(A p_a Psi(p_2/p_a)) where too little flows to spin the charger
 *             within 3 kPa of ambient, and below: p_a - drop (m/m_max)^2, as before a charger at rest
 * Symbols     A m2 as the opening suggests, k its scale on this engine | M metered, L kg/s lost before the throttle | p_2 manifold, p_a
 *             ambient, Pa | T_1 K as in the manifold
 * Limits      to some per cent; where opening or k is not known, p_2 where that is above ambient
 * Source      [heywood1988] App. C; less than 15 % of the largest flow spins no charger, 3 kPa: common practice, no source
 */
import { orificeFlowFunction } from "../../gas/index.ts";
import { findRoot } from "../../numerics/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../../quantities/index.ts";
import { findReading, plateOpening, type TallyModel } from "../../tally/index.ts";

/** Pa to which the pressure before the throttle is known: nearer to ambient it can't tell the loss of a filter */
const KNOWN_TO = 3e3;
const AT_REST = 0.15; // of the largest flow
/** of ambient: nearer, the flow function says too little of the area */
const HIGHEST_RATIO = 0.9;
const MOST_BOOST = 4; // of ambient: beyond what any pipe holds
const LEAST_PASSING = 0.1; // of what is metered

/** Pa, point by point; `lost`: kg/s that leave a pipe at this pressure, negative what enters */
export function pipePressure(model: TallyModel, lost: (i: number, pipe: number) => number): Float64Array {
  const { points, physics, assumptions } = model;
  const passed = areasPassed(model);
  return Float64Array.from(points, (point, i) => {
    const ambient = physics.barometer[i]!;
    const read = findReading(point, "boostPressure", null)?.mean;
    const pipe = read ?? heldBack(model, i, passed[i]!, lost);
    if (pipe > ambient + KNOWN_TO) return pipe;
    return ambient - assumptions.ductDrop * Math.min(1, physics.air[i]! / physics.largestFlow) ** 2;
  });
}

function heldBack({ physics }: TallyModel, i: number, area: number, lost: (i: number, pipe: number) => number): number {
  const pressure = physics.pressure[i]!;
  if (!(area > 0)) return pressure;
  const metered = physics.air[i]!;
  const excess = (pipe: number) =>
    (area * pipe * orificeFlowFunction(pressure / pipe)) / rootOfHeat(physics, i) -
    Math.max(metered - lost(i, pipe), LEAST_PASSING * metered);
  const outcome = findRoot(excess, { low: pressure, high: MOST_BOOST * physics.barometer[i]!, tolerance: 1 });
  return outcome.status === "found" ? outcome.root : pressure;
}

/** k A of every point; NaN where the opening or its scale is not known */
function areasPassed({ engine, points, physics }: TallyModel): Float64Array {
  const plate = plateOpening(engine, points);
  const areas = Float64Array.from(points, (point) => plate?.at(point)?.area ?? Number.NaN);
  const scales: number[] = [];
  points.forEach(({ states }, i) => {
    const ratio = physics.pressure[i]! / physics.barometer[i]!;
    const atRest = physics.air[i]! < AT_REST * physics.largestFlow && ratio < HIGHEST_RATIO;
    // At idle the bypass passes most, on the overrun the charger still turns.
    if (!atRest || states.includes("idle") || states.includes("fuel-cut")) return;
    const scale =
      (physics.air[i]! * rootOfHeat(physics, i)) / (areas[i]! * physics.barometer[i]! * orificeFlowFunction(ratio));
    if (scale > 0) scales.push(scale);
  });
  scales.sort((a, b) => a - b);
  const scale = scales[Math.floor(scales.length / 2)] ?? Number.NaN;
  return areas.map((area) => scale * area);
}

/** sqrt(R T) of the air before the throttle */
function rootOfHeat({ intakeTemperature }: TallyModel["physics"], i: number): number {
  return Math.sqrt(GAS_CONSTANT_DRY_AIR * intakeTemperature[i]!);
}
