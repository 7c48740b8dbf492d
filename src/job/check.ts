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
import { type FoundResult, foundLikelihood, type Weighed, weighAll } from "../findings/index.ts";
import { type Failure, failure, type Result, success } from "../quantities/index.ts";
import { buildTallyModel, type Prepared, prepare, type TallyModel, withReferences } from "../tally/index.ts";
import { readAssumptions } from "./assumptions/read-assumptions.ts";
import { parseEngineFile } from "./engine-file/parse-engine-file.ts";
import { parseFoundFile } from "./found-file/parse-found-file.ts";
import { makeOutcome } from "./outcome/make-outcome.ts";
import { channelViews, timelineView } from "./outcome/timeline.ts";
import { type ReferenceInput, readReferences } from "./reference/read-references.ts";
import { referenceText } from "./reference/write-reference.ts";
import type { Outcome } from "./result.ts";
import { type RecordingInput, type Understood, understand } from "./understand.ts";
import { compareVisits } from "./visit/compare-visits.ts";
import { splitVisits, type Visit } from "./visit/split-visits.ts";

export type CheckInput = {
  readonly recordings: readonly RecordingInput[];
  readonly engine: string;
  /** text of a channel list, or null */
  readonly channels: string | null;
  /** JSON text of changed assumptions by key, or null */
  readonly assumptions: string | null;
  /** text of a found file: workshop checks made, which hold for the last visit; null or left out: none */
  readonly found?: string | null;
  /** reference files of healthy engines of this kind */
  readonly references?: readonly ReferenceInput[];
  readonly toolVersion: string;
  readonly seed: number;
};

type Judged = {
  readonly own: TallyModel;
  readonly prepared: Prepared;
  readonly weighed: Weighed;
  readonly found: readonly FoundResult[];
};

/** `reference()`: the job as a reference file, or why it can be none. */
export type Checked = Outcome & { readonly reference: () => Result<string> };

export function check(input: CheckInput): Result<Checked> {
  const engine = parseEngineFile(input.engine);
  if (!engine.ok) return engine;
  const pins = input.channels === null ? null : parseChannelList(input.channels);
  if (pins !== null && !pins.ok) return pins;
  const assumptions = readAssumptions(input.assumptions);
  if (!assumptions.ok) return assumptions;
  const found = input.found == null ? success([]) : parseFoundFile(input.found, engine.value.banks);
  if (!found.ok) return found;
  const told = readReferences(input.references ?? [], engine.value);
  if (!told.ok) return told;

  const understood: Understood[] = [];
  const points: OperatingPoint[] = [];
  const keyOn: KeyOnReading[] = [];
  const sites = input.recordings.map(({ site }) => ({
    barometer: site?.barometer ?? engine.value.site.barometer,
    outside: site?.outside ?? engine.value.site.outside,
  }));
  for (const [index, recording] of input.recordings.entries()) {
    const one = understand(recording, { ...engine.value, site: sites[index]! }, pins?.value ?? null);
    if (!one.ok) return one;
    understood.push(one.value);
    const operating = findOperatingPoints(one.value.set, one.value.states, index, points.length + 1);
    points.push(...operating.points);
    keyOn.push(...operating.keyOn);
  }
  const recordings = input.recordings.map(({ name, sha256 }) => ({ name, sha256: sha256() }));
  const own = recordings.find((r) => told.value.recordings.has(r.sha256));
  if (own !== undefined) return toldOfItself(own.name);

  const visits: (Visit & Judged)[] = [];
  const split = splitVisits(input.recordings, { points, keyOn, sites });
  for (const visit of split) {
    const model = buildTallyModel(visit.data, engine.value, assumptions.value);
    if (visit.data.points.length === 0 || model.witnesses.length === 0) {
      const of = <T>(items: readonly T[]) => visit.recordings.map((i) => items[i]!);
      return nothingToTally(of(understood), of(input.recordings));
    }
    const prepared = prepare(withReferences(model, told.value.references, told.value.spreads), null);
    const checks = visit === split[split.length - 1] ? found.value : [];
    visits.push({
      ...visit,
      own: model,
      prepared,
      found: checks,
      weighed: weighAll(prepared, foundLikelihood(checks)),
    });
  }
  const last = visits[visits.length - 1]!;
  const compared = visits.map(({ name, prepared, weighed, found: checks, recordings: of }) => ({
    name: name ?? "",
    prepared,
    weighed,
    found: checks,
    recordings: of.map((i) => recordings[i]!.name),
  }));
  const { prepared, weighed, data } = last;
  const outcome = makeOutcome({
    toolVersion: input.toolVersion,
    seed: input.seed,
    prepared,
    weighed,
    data,
    found: found.value,
    assumptions: assumptions.value,
    recordings,
    warnings: [
      ...told.value.warnings,
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
      ...(compared.length > 1 ? { comparison: compareVisits(compared) } : {}),
    }),
  });
  const result = { ...outcome.result, assumptions: [...outcome.result.assumptions, ...told.value.assumptions] };
  return success({
    result,
    get view() {
      return outcome.view;
    },
    reference: () => referenceText(result, last.own, (cause) => outcome.view.causes[cause]?.title ?? cause),
  });
}

function toldOfItself(name: string): Failure {
  return failure(
    "reference-of-itself",
    `A reference was made of this very recording (${name}): it would be heard twice.`,
    "Use a reference of another engine of this kind, or another recording.",
  );
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
