/**
 * A planted fault in words: "manifold-leak=3.5 mm2", "map-scaled=0.1 about zero", "meter-scaled=0.85",
 * "exhaust-air-added=0.4 g/s bank 2", "meter-curve-wrong=0.1 with 0.05 at 30 %", "fuel-supply-limited=2 g/s losing 0.3".
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

/** One bank of two can have these alone (bank-side.ts). */
const OF_ONE_BANK: readonly PlantableCause[] = [
  "misfire",
  "fuel-delivery-scaled",
  "fuel-unmetered",
  "injector-offset",
  "exhaust-air-added",
  "lambda-biased",
];

const NUMBER = "[+-]?\\d+(?:\\.\\d+)?";
const FORM = new RegExp(`^([a-z-]+)\\s*=\\s*(${NUMBER})\\s*(mm2|kPa|g/s|K|deg|ms|1)?(?:\\s+([a-z].*))?$`);
const EXAMPLE = 'Write a cause and its size, such as "manifold-leak=3.5 mm2".';

type Extra = Omit<Fault, "cause" | "size">;

/** What may follow the size, and of which causes. */
const EXTRAS: readonly {
  readonly form: RegExp;
  readonly causes: readonly PlantableCause[];
  readonly example: string;
  /** least and most of the number */
  readonly limits: readonly [low: number, high: number] | null;
  readonly read: (text: string) => Extra;
}[] = [
  {
    form: /^about\s+(ambient|zero)$/,
    causes: ["map-scaled"],
    example: "map-scaled=0.1 about zero",
    limits: null,
    read: (pivot) => ({ pivot: pivot as "ambient" | "zero" }),
  },
  {
    form: /^bank\s+([12])$/,
    causes: OF_ONE_BANK,
    example: "exhaust-air-added=0.4 g/s bank 2",
    limits: null,
    read: (bank) => ({ bank: Number(bank) as 1 | 2 }),
  },
  {
    form: new RegExp(`^with\\s+(${NUMBER})\\s+at\\s+30\\s*%$`),
    causes: ["meter-curve-wrong"],
    example: "meter-curve-wrong=0.1 with 0.05 at 30 %",
    limits: FAULT_LIMITS["meter-curve-wrong"],
    read: (error) => ({ errorAt30: Number(error) }),
  },
  {
    form: new RegExp(`^losing\\s+(${NUMBER})$`),
    causes: ["fuel-supply-limited"],
    example: "fuel-supply-limited=2 g/s losing 0.3",
    limits: [0, 0.9],
    read: (loss) => ({ loss: Number(loss) }),
  },
];

export type FaultReason = "fault-unreadable" | "fault-unknown" | "fault-out-of-range";

export function parseFault(text: string): Result<Fault, FaultReason> {
  const match = FORM.exec(text.trim());
  if (match === null) return failure("fault-unreadable", `"${text}" is not a fault.`, EXAMPLE);
  const [, cause = "", number = "", unit, tail] = match;
  if (!isPlantable(cause)) {
    const known = Object.keys(PLANTABLE).join(", ");
    return failure("fault-unknown", `The model engine has no cause named "${cause}".`, `It has: ${known}.`);
  }
  if (unit !== undefined && unit !== PLANTABLE[cause]) {
    return failure("fault-unreadable", `The size of ${cause} is in ${PLANTABLE[cause]}, not ${unit}.`, EXAMPLE);
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
  if (tail === undefined) return success({ cause, size });
  const extra = readExtra(cause, tail);
  return extra.ok ? success({ cause, size, ...extra.value }) : extra;
}

function readExtra(cause: PlantableCause, tail: string): Result<Extra, FaultReason> {
  const possible = EXTRAS.filter(({ causes }) => causes.includes(cause));
  for (const { form, limits, read, example } of possible) {
    const value = form.exec(tail)?.[1];
    if (value === undefined) continue;
    if (limits !== null && !(Number(value) >= limits[0] && Number(value) <= limits[1]))
      return failure(
        "fault-out-of-range",
        `"${tail}" is more than the model engine can run with.`,
        `Stay between ${limits[0]} and ${limits[1]}, such as "${example}".`,
      );
    return success(read(value));
  }
  return failure(
    "fault-unreadable",
    `"${tail}" says nothing of ${cause}.`,
    possible.length === 0
      ? "Write nothing behind its size."
      : `Write it as in ${possible.map(({ example }) => `"${example}"`).join(" or ")}, or write nothing behind the size.`,
  );
}

function isPlantable(cause: string): cause is PlantableCause {
  return Object.hasOwn(PLANTABLE, cause);
}
