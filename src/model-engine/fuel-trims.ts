/**
 * Closed loop of the engine computer: a short trim that follows the probe and long trims learnt by cells of speed and load.
 *
 * A narrow probe tells rich from lean only, so the short trim jumps at each change and then ramps: a limit cycle. A wide probe
 * gives a number, so the short trim is proportional and integral. What stays in the short trim moves slowly into the long trim
 * of the cell. Both have a limit. Rates are common practice, no source.
 */
export type TrimState = {
  short: number;
  /** long trim of each cell */
  readonly long: Float64Array;
  rich: boolean;
};

export type TrimInputs = {
  readonly probe: "narrow" | "wide";
  /** lambda as the probe reads it, and as commanded */
  readonly lambdaRead: number;
  readonly lambdaCommanded: number;
  readonly cell: number;
  readonly limit: number;
  /** s in which a steady short trim moves into the cell; infinite: not learning */
  readonly learningTime: number;
};

const SPEED_EDGES = [1100 / 60, 2000 / 60, 3300 / 60];
const LOAD_EDGES = [0.3, 0.45, 0.65];
export const TRIM_CELLS = (SPEED_EDGES.length + 1) * (LOAD_EDGES.length + 1);

const RAMP = 0.025; // 1/s
const JUMP = 0.012;
const PROPORTIONAL = 0.15;
const INTEGRAL = 0.5; // 1/s

export function newTrims(): TrimState {
  return { short: 0, long: new Float64Array(TRIM_CELLS), rich: false };
}

/** Cell of a speed (1/s) and a load (air per stroke over that of standard air filling the cylinder). */
export function trimCell(speed: number, load: number): number {
  const speedStep = SPEED_EDGES.filter((edge) => speed > edge).length;
  const loadStep = LOAD_EDGES.filter((edge) => load > edge).length;
  return speedStep * (LOAD_EDGES.length + 1) + loadStep;
}

export function stepTrims(state: TrimState, u: TrimInputs, dt: number): void {
  const error = u.lambdaRead / u.lambdaCommanded - 1; // lean is positive: more fuel
  if (u.probe === "narrow") {
    const rich = error < 0;
    if (rich !== state.rich) state.short += rich ? -JUMP : JUMP;
    state.rich = rich;
    state.short += (rich ? -RAMP : RAMP) * dt;
  } else {
    const bounded = clamp(error, 0.15);
    state.short += INTEGRAL * bounded * dt;
  }
  state.short = clamp(state.short, u.limit);
  if (Number.isFinite(u.learningTime)) {
    const before = state.long[u.cell]!;
    const after = clamp(before + (state.short * dt) / u.learningTime, u.limit);
    state.long[u.cell] = after;
    state.short -= after - before;
  }
}

/** What the dose is multiplied with now; a wide probe adds its proportional part. */
export function trimFactor(state: TrimState, u: Pick<TrimInputs, "probe" | "lambdaRead" | "lambdaCommanded" | "cell">) {
  return (1 + shownShort(state, u)) * (1 + state.long[u.cell]!);
}

/** The short trim as a tester shows it. */
export function shownShort(state: TrimState, u: Pick<TrimInputs, "probe" | "lambdaRead" | "lambdaCommanded">): number {
  if (u.probe === "narrow") return state.short;
  return state.short + PROPORTIONAL * clamp(u.lambdaRead / u.lambdaCommanded - 1, 0.1);
}

function clamp(x: number, limit: number): number {
  return Math.min(Math.max(x, -limit), limit);
}
