/**
 * The whole path: recordings and an engine file in, the answer out. Pure: bytes, texts, version and seed are handed in.
 *
 *   bytes -> recording -> channels -> operating points -> witnesses -> tally -> findings -> outcome
 */
import {
  compareRecordings,
  findOperatingPoints,
  type KeyOnReading,
  type OperatingPoint,
  parseChannelList,
} from "../channels/index.ts";
import { weighAll } from "../findings/index.ts";
import { type Failure, failure, type Result, success } from "../quantities/index.ts";
import { buildTallyModel, defaultAssumptions, prepare, withAssumptions } from "../tally/index.ts";
import { parseEngineFile } from "./engine-file/parse-engine-file.ts";
import { parseJson } from "./json-text.ts";
import { makeOutcome } from "./outcome/make-outcome.ts";
import { channelViews, timelineView } from "./outcome/timeline.ts";
import type { Outcome } from "./result.ts";
import { type RecordingInput, type Understood, understand } from "./understand.ts";

export type CheckInput = {
  readonly recordings: readonly RecordingInput[];
  readonly engine: string;
  /** text of a channel list, or null */
  readonly channels: string | null;
  /** JSON text of changed assumptions by key, or null */
  readonly assumptions: string | null;
  readonly toolVersion: string;
  readonly seed: number;
};

export function check(input: CheckInput): Result<Outcome> {
  const engine = parseEngineFile(input.engine);
  if (!engine.ok) return engine;
  const pins = input.channels === null ? null : parseChannelList(input.channels);
  if (pins !== null && !pins.ok) return pins;
  const assumptions = readAssumptions(input.assumptions);
  if (!assumptions.ok) return assumptions;

  const understood: Understood[] = [];
  const points: OperatingPoint[] = [];
  const keyOn: KeyOnReading[] = [];
  for (const [index, recording] of input.recordings.entries()) {
    const one = understand(recording, engine.value, pins?.value ?? null);
    if (!one.ok) return one;
    understood.push(one.value);
    const found = findOperatingPoints(one.value.set, one.value.states, index, points.length + 1);
    points.push(...found.points);
    keyOn.push(...found.keyOn);
  }
  const data = { points, keyOn };
  const model = buildTallyModel(data, engine.value, assumptions.value);
  if (points.length === 0 || model.witnesses.length === 0) return nothingToTally(understood, input.recordings);
  const prepared = prepare(model, null);
  return success(
    makeOutcome({
      toolVersion: input.toolVersion,
      seed: input.seed,
      prepared,
      weighed: weighAll(prepared),
      data,
      assumptions: assumptions.value,
      recordings: input.recordings.map(({ name, sha256 }) => ({ name, sha256: sha256() })),
      warnings: [
        ...compareRecordings(
          understood.map(({ set, stated }, i) => ({ name: input.recordings[i]!.name, set, stated })),
          engine.value,
        ),
        ...understood.flatMap((u) => u.warnings),
      ],
      drawings: () => ({
        timelines: understood.map((u, i) => timelineView(i, input.recordings[i]!.name, u.set, u.states, points)),
        channels: understood.map((u) => channelViews(u.set)),
        recognitionWarnings: understood.map((u) => u.warnings),
      }),
    }),
  );
}

function readAssumptions(text: string | null) {
  if (text === null) return success(defaultAssumptions());
  const json = parseJson(text, "assumptions file");
  if (!json.ok) return json;
  if (typeof json.value !== "object" || json.value === null || Array.isArray(json.value)) {
    return failure(
      "not-an-object",
      "The assumptions file is not a list of names and numbers.",
      'Write for example { "meterScale": 0.03 }.',
    );
  }
  return withAssumptions(json.value as { [key: string]: unknown });
}

/** Why no operating point carries a witness of the air: said from the channels that are there. */
function nothingToTally(understood: readonly Understood[], recordings: readonly RecordingInput[]): Failure {
  const has = (quantity: string) =>
    understood.some((u) => u.set.channels.some((c) => c.quantity === quantity && c.standing === "measured"));
  const unused = understood
    .flatMap((u) => u.set.unrecognised)
    .filter((u) => u.candidates.length > 0)
    .map((u) => `"${u.header}" was not used: ${u.reason}.`)
    .slice(0, 3)
    .join(" ");
  const file = recordings.length === 1 ? { file: recordings[0]!.name } : {};
  if (!has("engineSpeed")) {
    return failure(
      "no-engine-speed",
      `No engine speed was recognised. ${unused}`.trim(),
      "Name its column in a channel list (airtally describe --channels-out writes one to change).",
      file,
    );
  }
  const speeds = understood.flatMap((u) => u.set.channels.filter((c) => c.quantity === "engineSpeed"));
  if (!speeds.some((c) => c.values.some((v) => v > 5))) {
    return failure(
      "engine-never-running",
      "The engine never runs in this recording.",
      "Record with the engine running: at least a minute of warm idle.",
      file,
    );
  }
  const witness = [
    "meterFlow",
    "meterVolumeFlow",
    "meterVoltage",
    "meterFrequency",
    "meterPeriod",
    "meterRatio",
    "manifoldPressure",
  ].some(has);
  if (!witness) {
    return failure(
      "no-air-witness",
      `No witness of the air was recognised: neither an air meter nor manifold pressure. ${unused}`.trim(),
      "Record air mass flow (or the meter's raw signal) or manifold pressure; if it is there under another name, pin it in a channel list.",
      file,
    );
  }
  return failure(
    "nothing-steady",
    "The engine never ran steadily enough for its witnesses to be compared.",
    "Hold idle and 2,500 rev/min for half a minute each; airtally describe shows gaps and rates.",
    file,
  );
}
