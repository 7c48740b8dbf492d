/**
 * Before the first start after a night everything is as warm as the air around: the intake temperature must agree with the rest.
 *
 * Equation    T_intake - mean(coolant, outside, oil) = b + error, in K
 * Rule        key on, engine standing, in the first seconds of a recording; the coolant cold and within 4 K of at least one other
 *             temperature that is not the intake's (recorded, or stated for the site)
 * Source      common practice, no source
 */
import type { KeyOnReading, OperatingData } from "../../channels/index.ts";
import type { EngineDescription } from "../../engine/index.ts";
import type { Assumptions } from "../assumptions.ts";
import { siteOf } from "../point-physics.ts";
import type { StandingObservation } from "../tally-model.ts";
import { placeOf } from "./place-of.ts";

/** s from the start of the recording */
const AT_START = 15;
/** K; a coolant at this or more was run before */
const WARM = 315;
/** K within which coolant and surroundings agree */
const AGREE = 4;

export function coldSoak(
  data: Pick<OperatingData, "keyOn" | "sites">,
  engine: EngineDescription,
  a: Assumptions,
  basis: Float64Array,
): StandingObservation[] {
  const found = data.keyOn.flatMap((at) => departure(at, data, engine, a));
  return found
    .slice(0, 1)
    .map((one) => ({ kind: "intake-temperature-at-cold-soak", unit: "K", meter: null, basis, ...one }));
}

function departure(
  at: KeyOnReading,
  data: Pick<OperatingData, "sites">,
  engine: EngineDescription,
  a: Assumptions,
): Pick<StandingObservation, "reading" | "variance" | "where">[] {
  const intake = at.readings.get("chargeTemperature") ?? at.readings.get("intakeTemperature");
  const coolant = at.readings.get("coolantTemperature")?.mean;
  if (at.start > AT_START || intake === undefined || coolant === undefined || coolant >= WARM) return [];
  const outside = at.readings.get("ambientTemperature")?.mean ?? siteOf(engine, data, at.recording).outside;
  const others = [outside, at.readings.get("oilTemperature")?.mean ?? null].filter((t) => t !== null);
  const agreeing = others.filter((t) => Math.abs(t - coolant) <= AGREE);
  if (agreeing.length === 0) return [];
  const witnesses = [coolant, ...agreeing];
  const mean = witnesses.reduce((sum, t) => sum + t, 0) / witnesses.length;
  const variance = intake.variance + a.temperatureSensor ** 2 * (1 + 1 / witnesses.length) + a.soakSpread ** 2;
  return [{ reading: intake.mean - mean, variance, where: placeOf([at]) }];
}
