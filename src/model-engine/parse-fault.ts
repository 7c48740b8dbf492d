/**
 * A planted fault in words: "manifold-leak=3.5 mm2", "map-scaled=0.1 about zero", "meter-scaled=0.85".
 * The unit may be left out; another than the catalogue's is refused, as are sizes that no engine runs with.
 */
import { failure, type Result, success } from "../quantities/index.ts";
import { type Fault, PLANTABLE, type PlantableCause } from "./fault.ts";

/** Sizes the model engine accepts, in the catalogue's unit. Wider than anything worth mending. */
export const FAULT_LIMITS: { readonly [cause in PlantableCause]: readonly [low: number, high: number] } = {
  "meter-fouled": [-0.6, 0.6],
  "meter-scaled": [0.4, 2.5],
  "meter-offset": [-5, 10],
  "meter-curve-wrong": [-0.5, 0.5],
  "vane-tilted": [-0.2, 0.5],
  "meter-pulsation": [-0.5, 1],
  "intake-restricted": [0, 30],
  "leak-before-throttle": [0, 2000],
  "boost-leak": [0, 300],
  "manifold-leak": [0, 60],
  "throttle-area-changed": [-15, 30],
  "map-biased": [-15, 30],
  "map-scaled": [-0.3, 0.3],
  "intake-temperature-biased": [-60, 60],
  "baro-biased": [-30, 30],
  "egr-stuck-open": [0, 60],
  "egr-low-flow": [0, 1],
  "breathing-reduced": [-0.6, 0],
  "valve-timing-shifted": [-30, 30],
  misfire: [0, 0.5],
  "fuel-delivery-scaled": [0.5, 1.6],
  "fuel-supply-limited": [0.2, 50],
  "fuel-pressure-reference": [0, 200],
  "fuel-unmetered": [0, 0.3],
  "fuel-composition": [0.5, 1.3],
  "injector-offset": [-0.8, 2],
  "exhaust-air-added": [0, 5],
  "lambda-biased": [-0.2, 0.3],
};

const FORM = /^([a-z-]+)\s*=\s*([+-]?\d+(?:\.\d+)?)\s*(mm2|kPa|g\/s|K|deg|ms|1)?(?:\s+about\s+(ambient|zero))?$/;
const EXAMPLE = 'Write a cause and its size, such as "manifold-leak=3.5 mm2".';

export type FaultReason = "fault-unreadable" | "fault-unknown" | "fault-out-of-range";

export function parseFault(text: string): Result<Fault, FaultReason> {
  const match = FORM.exec(text.trim());
  if (match === null) return failure("fault-unreadable", `"${text}" is not a fault.`, EXAMPLE);
  const [, cause = "", number = "", unit, pivot] = match;
  if (!isPlantable(cause)) {
    const known = Object.keys(PLANTABLE).join(", ");
    return failure("fault-unknown", `The model engine has no cause named "${cause}".`, `It has: ${known}.`);
  }
  if (unit !== undefined && unit !== PLANTABLE[cause]) {
    return failure("fault-unreadable", `The size of ${cause} is in ${PLANTABLE[cause]}, not ${unit}.`, EXAMPLE);
  }
  if (pivot !== undefined && cause !== "map-scaled") {
    return failure("fault-unreadable", `Only map-scaled has a pivot, ${cause} has none.`, EXAMPLE);
  }
  const size = Number(number);
  const [low, high] = FAULT_LIMITS[cause];
  if (size < low || size > high) {
    return failure(
      "fault-out-of-range",
      `${cause} of ${size} ${PLANTABLE[cause]} is more than the model engine can run with.`,
      `Stay between ${low} and ${high}.`,
    );
  }
  return success(pivot === undefined ? { cause, size } : { cause, size, pivot: pivot as "ambient" | "zero" });
}

function isPlantable(cause: string): cause is PlantableCause {
  return Object.hasOwn(PLANTABLE, cause);
}
