/** The causes with their laws: what the table says joined to what the physics says. */

import type { CauseEntry, Law } from "./cause.ts";
import table from "./causes.json" with { type: "json" };
import { baroBiased } from "./signatures/baro-biased.ts";
import { boostLeak } from "./signatures/boost-leak.ts";
import { breathingReduced } from "./signatures/breathing-reduced.ts";
import { egrLowFlow } from "./signatures/egr-low-flow.ts";
import { egrStuckOpen } from "./signatures/egr-stuck-open.ts";
import { exhaustAirAdded } from "./signatures/exhaust-air-added.ts";
import {
  fuelComposition,
  fuelDeliveryScaled,
  fuelUnmetered,
  injectorOffset,
  lambdaBiased,
} from "./signatures/fuel-side.ts";
import { fuelPressureReference, fuelSupplyLimited } from "./signatures/fuel-supply.ts";
import { intakeRestricted } from "./signatures/intake-restricted.ts";
import { intakeTemperatureBiased } from "./signatures/intake-temperature-biased.ts";
import { leakBeforeThrottle } from "./signatures/leak-before-throttle.ts";
import { manifoldLeak } from "./signatures/manifold-leak.ts";
import { mapBiased } from "./signatures/map-biased.ts";
import { mapScaled } from "./signatures/map-scaled.ts";
import { meterCurveWrong } from "./signatures/meter-curve-wrong.ts";
import { meterFouled } from "./signatures/meter-fouled.ts";
import { meterOffset } from "./signatures/meter-offset.ts";
import { meterPulsation } from "./signatures/meter-pulsation.ts";
import { meterScaled } from "./signatures/meter-scaled.ts";
import { misfire } from "./signatures/misfire.ts";
import { throttleAreaChanged } from "./signatures/throttle-area-changed.ts";
import { valveTimingShifted } from "./signatures/valve-timing-shifted.ts";
import { vaneTilted } from "./signatures/vane-tilted.ts";

const LAWS: readonly Law[] = [
  meterFouled,
  meterScaled,
  meterOffset,
  meterCurveWrong,
  vaneTilted,
  meterPulsation,
  intakeRestricted,
  leakBeforeThrottle,
  boostLeak,
  manifoldLeak,
  throttleAreaChanged,
  mapBiased,
  mapScaled,
  intakeTemperatureBiased,
  baroBiased,
  egrStuckOpen,
  egrLowFlow,
  breathingReduced,
  valveTimingShifted,
  misfire,
  fuelDeliveryScaled,
  fuelSupplyLimited,
  fuelPressureReference,
  fuelUnmetered,
  fuelComposition,
  injectorOffset,
  exhaustAirAdded,
  lambdaBiased,
];

/** `bank`: of two, the one that has the fault alone; null where the whole engine has it. */
export type Cause = CauseEntry & { readonly law: Law; readonly bank: 1 | 2 | null };

export const CATALOGUE: readonly Cause[] = (table.causes as unknown as readonly CauseEntry[]).map((row) => {
  const law = LAWS.find((l) => l.id === row.id);
  if (law === undefined) throw new Error(`Assertion failed: the cause ${row.id} has no law`);
  return { ...row, law, bank: null };
});

export const PRIOR_HEALTHY: number = table.healthy;
export const PRIOR_UNEXPLAINED: number = table.unexplained;
/** of faulty engines, those with two faults at once */
export const PRIOR_PAIRS: number = table.pairs;
/** how much rarer larger sizes are: see the note of causes.json */
export const SIZES_FALL: number = table.sizesFall;
