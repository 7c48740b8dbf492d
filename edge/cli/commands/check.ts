/** airtally check: the whole path for one job. */
import type { Command } from "commander";
import { check } from "../../../src/job/index.ts";
import { unusable } from "../cli-error.ts";
import { readTextInput } from "../input-file.ts";
import { planOutputs } from "../output-file.ts";
import { rateOf, recordingFile } from "../recording-file.ts";
import { today } from "../today.ts";

type Options = {
  engine: string;
  channels?: string;
  assumptions?: string;
  rate?: string;
  json?: string;
  report?: string;
  force?: boolean;
};

export function addCheck(program: Command, version: string): void {
  program
    .command("check")
    .description("hold the witnesses of the air against each other and say which departs, and why")
    .argument("<recording...>", "files of measured channels (delimited text)")
    .requiredOption("--engine <file>", "engine file; airtally engine-template prints one to start from")
    .option("--channels <file>", "channel list that pins or corrects what was recognised")
    .option("--assumptions <file>", "changed assumptions, by key")
    .option("--rate <hz>", "rows a second, for recordings without time")
    .option("--report <file>", "write the card as one self-contained HTML file")
    .option("--json <file>", "write the result (airtally-result/1); - for standard output")
    .option("--force", "replace existing output files")
    .action((recordings: string[], options: Options) => run(recordings, options, version));
}

async function run(paths: string[], options: Options, version: string): Promise<void> {
  const rate = rateOf(options.rate);
  const recordings = paths.map((path) => recordingFile(path, rate));
  const engine = readTextInput(options.engine);
  const channels = options.channels === undefined ? null : readTextInput(options.channels);
  const assumptions = options.assumptions === undefined ? null : readTextInput(options.assumptions);
  const inputs = [
    ...recordings,
    engine.file,
    ...(channels === null ? [] : [channels.file]),
    ...(assumptions === null ? [] : [assumptions.file]),
  ];
  const [json, report] = planOutputs([options.json, options.report], inputs, options.force === true);

  const outcome = check({
    recordings: recordings.map((r) => r.input),
    engine: engine.text,
    channels: channels?.text ?? null,
    assumptions: assumptions?.text ?? null,
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
    if (options.json !== "-" && options.report !== "-") {
      process.stdout.write(
        renderSummaryText(outcome.value, { width: Math.min(process.stdout.columns ?? 96, 110), colour: false }),
      );
    }
  }
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
  if (["unknown-assumption", "not-a-positive-number", "not-an-object"].includes(reason)) return options.assumptions;
  return undefined;
}
