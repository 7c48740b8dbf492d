/**
 * What each plantable cause is, what its size means, and which part an engine must have for it. The unit stands in `PLANTABLE`, the
 * sizes that the model engine runs with in `FAULT_LIMITS`.
 */
import type { PlantableCause } from "../../model-engine/index.ts";

export type NeededPart =
  | "meter"
  | "heated meter"
  | "vane meter"
  | "compressor"
  | "EGR valve"
  | "manifold pressure sensor"
  | "lambda probe";

export type FaultWords = {
  readonly is: string;
  readonly size: string;
  readonly needs: NeededPart | null;
  readonly example: string;
};

const words = (is: string, size: string, example: string, needs: NeededPart | null = null): FaultWords => ({
  is,
  size,
  example,
  needs,
});

export const FAULT_WORDS: { readonly [cause in PlantableCause]: FaultWords } = {
  "meter-fouled": words(
    "dirt on the heated element, growing with flow",
    "relative error at 70 % of the largest flow",
    "-0.12",
    "heated meter",
  ),
  "meter-scaled": words("the meter reads wrong by one factor", "reading over truth", "0.85", "meter"),
  "meter-offset": words("signal added or lost", "reading minus truth at idle flow", "0.4 g/s", "meter"),
  "meter-curve-wrong": words(
    "wrong part or table",
    'relative error at 70 % of the largest flow, and at 30 % unless told ("with 0.05 at 30 %")',
    "0.15",
    "meter",
  ),
  "vane-tilted": words(
    "the vane hangs out of balance",
    "closing torque over the full spring torque",
    "0.1",
    "vane meter",
  ),
  "meter-pulsation": words(
    "pulsation misread at low speed and high load",
    "relative error at its worst",
    "0.2",
    "meter",
  ),
  "intake-restricted": words("filter or duct blocked", "pressure lost at the largest flow", "8 kPa"),
  "leak-before-throttle": words("air enters between meter and throttle", "sharp-edged hole", "300 mm2"),
  "boost-leak": words("hole in the charge pipe", "sharp-edged hole", "40 mm2", "compressor"),
  "manifold-leak": words("air enters after the throttle", "sharp-edged hole", "3.5 mm2"),
  "throttle-area-changed": words("dirt at, or wear of, the throttle plate", "area added at idle", "-3 mm2"),
  "map-biased": words(
    "manifold pressure sensor with a wrong zero",
    "reading minus truth",
    "5 kPa",
    "manifold pressure sensor",
  ),
  "map-scaled": words(
    'leaky hose ("about ambient", so if left out) or wrong part ("about zero")',
    "share that the reading is stretched by",
    "0.1 about zero",
    "manifold pressure sensor",
  ),
  "intake-temperature-biased": words("intake temperature misread", "reading minus truth", "15 K"),
  "baro-biased": words("barometer misread", "reading minus truth", "5 kPa"),
  "egr-stuck-open": words("exhaust gas enters although it should not", "effective area", "8 mm2"),
  "egr-low-flow": words("less exhaust gas than commanded", "share that remains", "0.3", "EGR valve"),
  "breathing-reduced": words("exhaust blocked, growing with flow", "relative change at the largest flow", "-0.2"),
  "valve-timing-shifted": words("camshaft off", "crank angle, late is positive", "12 deg"),
  misfire: words("cylinders that do not fire", "share of firings", "0.08"),
  "fuel-delivery-scaled": words("injectors or pressure off by one factor", "delivered over expected", "0.85"),
  "fuel-supply-limited": words(
    'pump or filter gives no more: a quarter is missing at the largest flow unless told ("losing 0.3")',
    "fuel flow from which it falls short",
    "3 g/s",
  ),
  "fuel-pressure-reference": words("regulator hose off", "fuel pressure too high at idle", "60 kPa"),
  "fuel-unmetered": words("fuel that nobody commanded", "fuel flow", "0.05 g/s"),
  "fuel-composition": words("another fuel than assumed", "stoichiometric ratio, true over assumed", "0.92"),
  "injector-offset": words("injector dead time off", "true minus assumed", "0.3 ms"),
  "exhaust-air-added": words("crack before the probe", "air at idle", "0.5 g/s"),
  "lambda-biased": words("the probe misreads", "reading minus truth", "0.05", "lambda probe"),
};
