/**
 * The model engine on request: an engine of a family, what is done with it, planted faults, weather and a recorder in; a recording,
 * the engine file that its owner would write, and the truth out. All invented, and every text says so. The same options give the
 * same bytes.
 */
import { humidityRatioFromRelativeHumidity, standardAtmosphere } from "../../gas/index.ts";
import {
  buildEngine,
  type EngineDesign,
  FAMILIES,
  FAMILY_DESIGNS,
  type Family,
  type Fault,
  PLANTABLE,
  RECORDER_CHANNELS,
  simulateRecording,
  truthText,
  USUAL_LOSS,
} from "../../model-engine/index.ts";
import { type Result, success } from "../../quantities/index.ts";
import { type OptionReason, optionFailure, readOption, readOptions } from "../meter/option-values.ts";
import { FAULT_WORDS } from "./fault-table.ts";
import { LONGEST_RECORDING, makeProtocol, PROTOCOL_NAMES } from "./protocols.ts";
import { type FaultsReason, readFaults } from "./read-faults.ts";
import { readRecorder } from "./read-recorder.ts";
import { readChoice, readNumber } from "./read-words.ts";
import { SIMULATE_DEFAULTS, type SimulateOptions } from "./simulate-options.ts";
import type { SimulatedSheet } from "./simulate-schema.ts";
import { toldSteps } from "./told-steps.ts";

export type SimulateReason = OptionReason | FaultsReason;

export type Simulated = {
  /** what was done, and what really happened step by step */
  readonly sheet: SimulatedSheet;
  readonly recording: string;
  /** the engine file as JSON text */
  readonly engine: string;
  /** what really happened, ten rows a second */
  readonly truth: string;
};

export const INVENTED = "Invented: computed by the model engine of Airtally, not measured on any engine";
const TRUTH_EVERY = 5; // steps of 20 ms

export function simulate(options: SimulateOptions, toolVersion: string): Result<Simulated, SimulateReason> {
  const with_ = { ...SIMULATE_DEFAULTS, ...options };
  const family = readChoice(with_.family, "family", FAMILIES);
  if (!family.ok) return family;
  const numbers = readNumbers(options);
  if (!numbers.ok) return numbers;
  const { seed, engineNumber, tolerances } = numbers.value;
  const design = readDesign(family.value, options.probe);
  if (!design.ok) return design;
  const faults = readFaults(options.faults ?? [], design.value);
  if (!faults.ok) return faults;
  const protocol = readProtocol(options, design.value, seed);
  if (!protocol.ok) return protocol;
  const ambient = readAmbient(options);
  if (!ambient.ok) return ambient;
  const recorder = readRecorder({ family: family.value, design: design.value, options, comments: [INVENTED] });
  if (!recorder.ok) return recorder;

  const { recording, engine, truth } = simulateRecording({
    engine: buildEngine(design.value, engineNumber, tolerances),
    protocol: protocol.value.protocol,
    faults: faults.value,
    ambient: ambient.value,
    recorder: recorder.value.recorder,
    seed,
  });
  const planted = faults.value.map(tellFault);
  const headline = `${capital(design.value.note)}, number ${engineNumber}; ${
    planted.length === 0 ? "healthy" : `planted: ${planted.join(", ")}`
  }.`;
  return success({
    sheet: {
      format: "airtally-simulate/1",
      toolVersion,
      notice: `${INVENTED}.`,
      kind: "recording",
      headline,
      family: family.value,
      engine: {
        note: design.value.note,
        number: engineNumber,
        tolerances,
        lambdaProbe: design.value.lambdaProbe,
      },
      faults: faults.value.map((fault) => ({
        cause: fault.cause,
        size: fault.size,
        unit: PLANTABLE[fault.cause],
        sizeMeans: FAULT_WORDS[fault.cause].size,
        pivot: fault.cause === "map-scaled" ? (fault.pivot ?? "ambient") : null,
        bank: fault.bank ?? null,
        errorAt30: fault.cause === "meter-curve-wrong" ? (fault.errorAt30 ?? fault.size) : null,
        loss: fault.cause === "fuel-supply-limited" ? (fault.loss ?? USUAL_LOSS) : null,
      })),
      protocol: protocol.value.name,
      duration_s: Number((truth.rows * truth.step).toFixed(2)),
      ambient: {
        pressure_kPa: Number((ambient.value.pressure / 1e3).toFixed(3)),
        temperature_degC: Number((ambient.value.temperature - 273.15).toFixed(2)),
        relativeHumidity: ambient.value.relativeHumidity,
      },
      recorder: {
        name: recorder.value.name,
        rate_per_s: recorder.value.rate,
        channels: recorder.value.recorder.channels.map((id) => RECORDER_CHANNELS[id].longName),
      },
      seed,
      steps: toldSteps(protocol.value.protocol, truth, design.value.meter !== null),
    },
    recording: recording.text,
    engine: `${JSON.stringify(engine, null, 2)}\n`,
    truth: `# ${INVENTED}: the truth beside a recording\n# ${headline}\n${truthText(truth, TRUTH_EVERY)}`,
  });
}

function readNumbers(options: SimulateOptions) {
  const seed = readNumber(options.seed ?? SIMULATE_DEFAULTS.seed, "seed", WHOLE);
  if (!seed.ok) return seed;
  const engineNumber = readNumber(options.engineNumber ?? String(seed.value), "engine number", WHOLE);
  if (!engineNumber.ok) return engineNumber;
  const tolerances = readNumber(options.tolerances ?? SIMULATE_DEFAULTS.tolerances, "share of the tolerances", {
    low: 0,
    high: 1,
  });
  if (!tolerances.ok) return tolerances;
  return success({ seed: seed.value, engineNumber: engineNumber.value, tolerances: tolerances.value });
}

const WHOLE = { low: 0, high: 2 ** 31 - 1, whole: true };

function readDesign(family: Family, probe: string | undefined): Result<EngineDesign, OptionReason> {
  const design = FAMILY_DESIGNS[family];
  if (probe === undefined) return success(design);
  const lambdaProbe = readChoice(probe, "control probe", ["narrow", "wide"] as const);
  if (!lambdaProbe.ok) return lambdaProbe;
  if (design.lambdaProbe === "none")
    return optionFailure(`The ${design.note} has no control probe.`, "Leave the probe away, or take another family.");
  return success({ ...design, lambdaProbe: lambdaProbe.value });
}

function readProtocol(options: SimulateOptions, design: EngineDesign, seed: number) {
  const name = readChoice(options.protocol ?? SIMULATE_DEFAULTS.protocol, "protocol", PROTOCOL_NAMES);
  if (!name.ok) return name;
  const duration =
    options.duration === undefined
      ? success(null)
      : readOption(options.duration, "duration", { dimension: "time", low: 1, high: LONGEST_RECORDING, unit: "s" });
  if (!duration.ok) return duration;
  const protocol = makeProtocol({ name: name.value, duration: duration.value, seed, top: design.largestSpeed });
  return protocol.ok ? success({ name: name.value, protocol: protocol.value }) : protocol;
}

/** The ranges of the issue of the model engine, with a little room: sea level to 2,500 m, -10 to 40 degC. */
function readAmbient(options: SimulateOptions) {
  if (options.altitude !== undefined && options.barometer !== undefined)
    return optionFailure(
      "The altitude and the barometer are both given.",
      "Give one: the barometer at the site, or its altitude.",
    );
  const { altitude, temperature, humidity } = { ...SIMULATE_DEFAULTS, ...options };
  const read = readOptions(
    { altitude, barometer: options.barometer, temperature, humidity },
    {
      altitude: { dimension: "length", low: 0, high: 2500, unit: "m" },
      barometer: { dimension: "pressure", low: 72e3, high: 106e3, unit: "kPa" },
      temperature: { dimension: "temperature", low: 253.15, high: 318.15, unit: "degC" },
      humidity: { dimension: "ratio", low: 0, high: 1, unit: "%" },
    },
  );
  if (!read.ok) return read;
  const pressure = read.value.barometer ?? standardAtmosphere(read.value.altitude!).pressure;
  const air = { pressure, temperature: read.value.temperature!, relativeHumidity: read.value.humidity! };
  return success({ ...air, humidityRatio: humidityRatioFromRelativeHumidity(air) });
}

/** As it is written in a call, but for the sign between. */
function tellFault({ cause, size, pivot, bank, errorAt30, loss }: Fault): string {
  const told = [`${cause} ${size}${PLANTABLE[cause] === "1" ? "" : ` ${PLANTABLE[cause]}`}`];
  if (pivot !== undefined) told.push(`about ${pivot}`);
  if (bank !== undefined) told.push(`bank ${bank}`);
  if (errorAt30 !== undefined) told.push(`with ${errorAt30} at 30 %`);
  if (loss !== undefined) told.push(`losing ${loss}`);
  return told.join(" ");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
