/** airtally check: the whole path for one job. */
import type { Command } from "commander";
import { type Checked, check } from "../../../src/job/index.ts";
import { unusable } from "../cli-error.ts";
import { readTextInput } from "../input-file.ts";
import { jobRecordings } from "../job-recordings.ts";
import { type Output, planOutputs } from "../output-file.ts";
import { rateOf } from "../recording-file.ts";
import { today } from "../today.ts";

type Options = {
  engine: string;
  channels?: string;
  assumptions?: string;
  found?: string;
  visit?: string;
  reference?: string[];
  referenceOut?: string;
  rate?: string;
  json?: string;
  report?: string;
  force?: boolean;
};

export function addCheck(program: Command, version: string): void {
  program
    .command("check")
    .description("hold the witnesses of the air against each other and say which departs, and why")
    .argument("[recording...]", "files of measured channels (delimited text); may stand in the visit file instead")
    .requiredOption("--engine <file>", "engine file; airtally engine-template prints one to start from")
    .option("--channels <file>", "channel list that pins or corrects what was recognised")
    .option("--assumptions <file>", "changed assumptions, by key")
    .option("--found <file>", "found file: workshop checks made, and what they showed")
    .option("--visit <file>", "visit file: recordings with their own barometer, outside temperature and visit")
    .option("--reference <file...>", "reference of a healthy engine of this kind; may be given several times")
    .option("--reference-out <file>", "write this job as a reference, if it is judged healthy")
    .option("--rate <hz>", "rows a second, for recordings without time")
    .option("--report <file>", "write the card as one self-contained HTML file")
    .option("--json <file>", "write the result (airtally-result/1); - for standard output")
    .option("--force", "replace existing output files")
    .action((recordings: string[], options: Options) => run(recordings, options, version));
}

async function run(paths: string[], options: Options, version: string): Promise<void> {
  const rate = rateOf(options.rate);
  const { recordings, visitFile } = jobRecordings(paths, options.visit, rate);
  const engine = readTextInput(options.engine);
  const channels = options.channels === undefined ? null : readTextInput(options.channels);
  const assumptions = options.assumptions === undefined ? null : readTextInput(options.assumptions);
  const found = options.found === undefined ? null : readTextInput(options.found);
  const references = (options.reference ?? []).map(readTextInput);
  const inputs = [
    ...recordings,
    ...visitFile,
    engine.file,
    ...references.map((r) => r.file),
    ...(channels === null ? [] : [channels.file]),
    ...(assumptions === null ? [] : [assumptions.file]),
    ...(found === null ? [] : [found.file]),
  ];
  const [json, report, referenceOut] = planOutputs(
    [options.json, options.report, options.referenceOut],
    inputs,
    options.force === true,
  );

  const outcome = check({
    recordings: recordings.map((r) => r.input),
    engine: engine.text,
    channels: channels?.text ?? null,
    assumptions: assumptions?.text ?? null,
    found: found?.text ?? null,
    references: references.map(({ text, file }) => ({ name: file.name, text })),
    toolVersion: version,
    seed: 0,
  });
  if (!outcome.ok) throw unusable(outcome, fileAtFault(outcome.reason, options));
  json?.write(`${JSON.stringify(outcome.value.result, null, 2)}\n`);
  if (report != null || options.json !== "-") {
    // Drawing is loaded only when something is drawn: the answer alone comes faster.
    const { renderReportHtml, renderSummaryText } = await import("../../../src/report/index.ts");
    report?.write(
      renderReportHtml({
        outcome: outcome.value,
        title: recordings.map((r) => r.input.name).join(", "),
        date: today(),
      }),
    );
    if (![options.json, options.report, options.referenceOut].includes("-")) {
      process.stdout.write(
        renderSummaryText(outcome.value, { width: Math.min(process.stdout.columns ?? 96, 110), colour: false }),
      );
    }
  }
  if (referenceOut != null) writeReference(outcome.value, referenceOut);
}

/** Last, so that a job that can be no reference is still answered. */
function writeReference(checked: Checked, out: Output): void {
  const reference = checked.reference();
  if (!reference.ok) throw unusable(reference);
  out.write(reference.value);
}

/** Which file a reason is about, where the failure itself names none. */
function fileAtFault(reason: string, options: Options): string | undefined {
  if (
    [
      "not-json",
      "not-valid",
      "two-stroke",
      "no-curve",
      "too-few-points",
      "curve-not-monotone",
      "curve-point-invalid",
    ].includes(reason)
  )
    return options.engine;
  if (reason.startsWith("found-")) return options.found;
  if (reason.startsWith("assumptions-")) return options.assumptions;
  return undefined;
}
