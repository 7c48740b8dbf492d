/**
 * The model engine on request: a family, a seed and planted faults in; a recording, the engine file that belongs to it and the truth
 * out. All invented, and the recording says so. The same options give the same bytes.
 */
import {
  ambientAt,
  FAMILIES,
  FAMILY_DESIGNS,
  type Family,
  type Fault,
  parseFault,
  type Recorder,
  roadDriving,
  simulateFamily,
  standardRecording,
  standardTester,
  truthText,
  workshopLogger,
} from "../model-engine/index.ts";
import { seededRandom } from "../numerics/index.ts";
import { failure, parseQuantity, type Result, success } from "../quantities/index.ts";

export type SimulateOptions = {
  readonly family: string;
  readonly seed: number;
  /** each as "manifold-leak=3.5 mm2" */
  readonly faults: readonly string[];
  /** "tester": one channel after the other; "logger": raw signals, all channels at `rate` (1/s, 1 to 50) */
  readonly recorder: "tester" | "logger";
  readonly rate: number;
  /** s of road driving after the standard recording, 0 to 3600 */
  readonly driving: number;
  /** m, 0 to 2500; a quantity such as "12 degC", -20 to 45; 0 to 1 */
  readonly altitude: number;
  readonly temperature: string;
  readonly relativeHumidity: number;
};

export const SIMULATE_DEFAULTS: SimulateOptions = {
  family: "petrol-with-meter",
  seed: 1,
  faults: [],
  recorder: "tester",
  rate: 10,
  driving: 240,
  altitude: 100,
  temperature: "18 degC",
  relativeHumidity: 0.5,
};

export const SIMULATE_FAMILIES: readonly string[] = FAMILIES;

export type Simulated = {
  readonly name: string;
  readonly recording: string;
  /** the engine file as JSON text */
  readonly engine: string;
  /** what really happened, ten rows a second */
  readonly truth: string;
};

export type SimulateReason = "option-out-of-range" | "family-unknown" | "fault-refused" | "temperature-unreadable";

const TRUTH_EVERY = 5; // steps of 20 ms
const SAID = "Invented recording made by the model engine of Airtally";

export function simulate(options: SimulateOptions): Result<Simulated, SimulateReason> {
  const family = FAMILIES.find((name) => name === options.family);
  if (family === undefined) {
    const message = `There is no family named "${options.family}".`;
    return failure("family-unknown", message, `There are: ${FAMILIES.join(", ")}.`);
  }
  const ranges: readonly (readonly [name: string, value: number, low: number, high: number])[] = [
    ["seed", options.seed, 0, Number.MAX_SAFE_INTEGER],
    ["rate", options.rate, 1, 50],
    ["driving", options.driving, 0, 3600],
    ["altitude", options.altitude, 0, 2500],
    ["relative humidity", options.relativeHumidity, 0, 1],
  ];
  const out = ranges.find(([, value, low, high]) => !(value >= low && value <= high));
  if (out !== undefined || !Number.isInteger(options.seed)) {
    const [name, value, low, high] = out ?? ranges[0]!;
    const whole = name === "seed" ? "a whole number " : "";
    return failure("option-out-of-range", `The ${name} cannot be ${value}.`, `Give ${whole}from ${low} to ${high}.`);
  }
  const temperature = parseQuantity(options.temperature, "temperature");
  if (!temperature.ok) return failure("temperature-unreadable", temperature.message, temperature.remedy);
  if (temperature.value < 253.15 || temperature.value > 318.15) {
    const message = `The temperature cannot be ${options.temperature}.`;
    return failure("option-out-of-range", message, "Give one from -20 degC to 45 degC.");
  }
  const faults: Fault[] = [];
  for (const text of options.faults) {
    const fault = parseFault(text);
    if (!fault.ok) return failure("fault-refused", fault.message, fault.remedy);
    const misplaced = misplacedIn(fault.value, family);
    if (misplaced !== null) return failure("fault-refused", misplaced, "Choose another family or another cause.");
    faults.push(fault.value);
  }
  const { recording, engine, truth } = simulateFamily({
    family,
    seed: options.seed,
    faults,
    protocol: [
      ...standardRecording(FAMILY_DESIGNS[family].largestSpeed),
      ...roadDriving(
        seededRandom(options.seed).fork("road"),
        options.driving,
        0.6 * FAMILY_DESIGNS[family].largestSpeed,
      ),
    ],
    ambient: ambientAt({
      altitude: options.altitude,
      temperature: temperature.value,
      relativeHumidity: options.relativeHumidity,
    }),
    recorder: recorderOf(options, family),
  });
  return success({
    name: recording.name,
    recording: recording.text,
    engine: `${JSON.stringify(engine, null, 2)}\n`,
    truth: truthText(truth, TRUTH_EVERY),
  });
}

function recorderOf(options: SimulateOptions, family: Family): Recorder {
  const tester = standardTester(family, [SAID]);
  if (options.recorder === "tester") return tester;
  return workshopLogger(options.rate, tester.style, FAMILY_DESIGNS[family].meter?.kind ?? null);
}

/** Why this engine cannot have this fault, or null. */
function misplacedIn(fault: Fault, family: Family): string | null {
  const { meter, egrValveArea } = FAMILY_DESIGNS[family];
  const heated = meter?.kind === "hot-wire" || meter?.kind === "hot-film";
  if (fault.cause === "vane-tilted" && meter?.kind !== "vane") return `The family ${family} has no vane to tilt.`;
  if (fault.cause === "meter-fouled" && !heated) return `The family ${family} has no heated meter to foul.`;
  if (fault.cause.startsWith("meter-") && meter === null) return `The family ${family} has no air meter.`;
  if (fault.cause === "egr-low-flow" && egrValveArea === null) return `The family ${family} has no EGR valve.`;
  return null;
}
