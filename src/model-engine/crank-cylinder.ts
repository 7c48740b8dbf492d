/**
 * One cylinder by crank angle: filling and emptying through its valves, compression, heat release, wall heat.
 *
 * Equation    burnt share x = 1 - exp(-5 ((t - t_0)/d)^3)                                Wiebe                       (1)
 *             h = 3.26 b^-0.2 p^0.8 T^-0.55 w^0.8,  w = 2.28 s (6.18 s while gas is exchanged)      Woschni               (2)
 *             Q = m_air H share/(AFR lambda) released by (1); p dV work exact for each step, then heat and flow
 * Symbols     t crank angle, t_0 start, d duration | b m bore | p kPa | T K | w, s m/s gas and mean piston speed | h W/(m2 K)
 * Validity    fired or motored, 5 to 120 turns a second; the combustion term of (2) is left out, so wall heat is low when fired
 * Source      (1) [heywood1988] eq. (9.32), a = 5, m = 2; (2) [heywood1988] eq. (12.19); start, duration common practice, no source
 * Check       crank-cylinder.test.ts
 */
import { type CrankGeometry, cylinderVolume, VALVE_TIMING, valveShare, wallArea } from "./crank-geometry.ts";
import {
  changeVolume,
  type GasVolume,
  move,
  type OrificeFlow,
  pressureOf,
  temperatureOf,
  throughHole,
} from "./gas-volume.ts";

export type Running = {
  /** 1/s */
  readonly speed: number;
  /** J for each kg of fresh air burnt; 0 is motored */
  readonly heatPerAir: number;
  /** crank degrees, late is positive, of the intake valve */
  readonly intakeLate: number;
  /** K; null: no heat through the walls */
  readonly wallTemperature: number | null;
};

export type CrankCylinder = {
  readonly gas: GasVolume;
  /** J to be released in this cycle, and the share released */
  heat: number;
  released: number;
  /** mass share of burnt gas when the intake valve closed last */
  trappedBurntShare: number;
  /** since the cycle began: kg through the intake valve, those of them burnt, J of work */
  drawn: number;
  drawnBurnt: number;
  work: number;
};

const BURN_STARTS = 700; // degrees: 20 before firing dead centre
const BURN_LASTS = 55;

/** From `degrees` on by `step` degrees; `intake` and `exhaust` are what its valves open to. */
export function stepCylinder(
  g: CrankGeometry,
  cylinder: CrankCylinder,
  at: {
    readonly degrees: number;
    readonly step: number;
    /** s */
    readonly dt: number;
    readonly intake: GasVolume;
    readonly exhaust: GasVolume;
  },
  running: Running,
  flow: OrificeFlow,
): void {
  const { gas } = cylinder;
  const { dt } = at;
  const after = at.degrees + at.step;
  cylinder.work += changeVolume(gas, cylinderVolume(g, after));
  burn(cylinder, after, running);
  if (running.wallTemperature !== null) {
    const open = after > VALVE_TIMING.exhaustOpens && after < VALVE_TIMING.intakeCloses;
    loseHeat(g, gas, running.wallTemperature, 2 * g.bore * running.speed * (open ? 6.18 : 2.28), dt);
  }
  const { intakeOpens, intakeCloses, exhaustOpens, exhaustCloses } = VALVE_TIMING;
  const late = running.intakeLate;
  const intakeArea = g.intakeArea * valveShare(after, intakeOpens + late, intakeCloses + late);
  const exhaustArea = g.exhaustArea * valveShare(after, exhaustOpens + late, exhaustCloses + late);
  const inward = throughHole(at.intake, gas, intakeArea, dt, flow);
  const source = inward > 0 ? at.intake : gas;
  cylinder.drawnBurnt += (inward * source.burnt) / source.mass;
  move(at.intake, gas, inward);
  cylinder.drawn += inward;
  if (at.degrees <= intakeCloses + late && after > intakeCloses + late)
    cylinder.trappedBurntShare = gas.burnt / gas.mass;
  move(gas, at.exhaust, throughHole(gas, at.exhaust, exhaustArea, dt, flow));
}

function burn(cylinder: CrankCylinder, degrees: number, running: Running): void {
  const into = (((degrees - BURN_STARTS) % 720) + 720) % 720;
  if (running.heatPerAir === 0 || into > BURN_LASTS) return;
  const { gas } = cylinder;
  if (cylinder.heat === 0) {
    cylinder.heat = (gas.mass - gas.burnt) * running.heatPerAir;
    cylinder.released = 0;
  }
  const share = 1 - Math.exp(-5 * (into / BURN_LASTS) ** 3);
  const fresh = gas.mass - gas.burnt;
  gas.energy += cylinder.heat * (share - cylinder.released);
  gas.burnt += (fresh * (share - cylinder.released)) / Math.max(1 - cylinder.released, 1e-9);
  cylinder.released = share;
}

function loseHeat(g: CrankGeometry, gas: GasVolume, wall: number, gasSpeed: number, dt: number): void {
  const temperature = temperatureOf(gas);
  const pressure = pressureOf(gas) / 1e3;
  const h = 3.26 * g.bore ** -0.2 * pressure ** 0.8 * temperature ** -0.55 * gasSpeed ** 0.8;
  gas.energy -= h * wallArea(g, gas.volume) * (temperature - wall) * dt;
}
