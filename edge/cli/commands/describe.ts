/** airtally describe: what is in a recording, and how each channel was recognised. */
import type { Command } from "commander";
import { type Description, describe } from "../../../src/job/index.ts";
import { unusable } from "../cli-error.ts";
import { readTextInput } from "../input-file.ts";
import { planOutputs } from "../output-file.ts";
import { rateOf, recordingFile } from "../recording-file.ts";

type Options = {
  engine?: string;
  channels?: string;
  channelsOut?: string;
  rate?: string;
  json?: string;
  force?: boolean;
};

export function addDescribe(program: Command, version: string): void {
  program
    .command("describe")
    .description("say what is in a recording: channels, units, rates, gaps, how each was recognised")
    .argument("<recording>", "file of measured channels (delimited text)")
    .option("--engine <file>", "engine file: lets a computed flow be unmasked by displacement")
    .option("--channels <file>", "channel list that pins or corrects what was recognised")
    .option("--channels-out <file>", "write the channel list, to be corrected by hand")
    .option("--rate <hz>", "rows a second, for a recording without time")
    .option("--json <file>", "write the description; - for standard output")
    .option("--force", "replace existing output files")
    .action((recording: string, options: Options) => run(recording, options, version));
}

function run(path: string, options: Options, version: string): void {
  const recording = recordingFile(path, rateOf(options.rate));
  const engine = options.engine === undefined ? null : readTextInput(options.engine);
  const channels = options.channels === undefined ? null : readTextInput(options.channels);
  const inputs = [recording, ...(engine === null ? [] : [engine.file]), ...(channels === null ? [] : [channels.file])];
  const [json, list] = planOutputs([options.json, options.channelsOut], inputs, options.force === true);
  const described = describe(
    {
      recording: recording.input,
      engine: engine?.text ?? null,
      channels: channels?.text ?? null,
    },
    version,
  );
  if (!described.ok) throw unusable(described);
  list?.write(described.value.channelList);
  json?.write(`${JSON.stringify(described.value.description, null, 2)}\n`);
  if (options.json !== "-" && options.channelsOut !== "-") process.stdout.write(tableOf(described.value.description));
}

function tableOf(d: Description): string {
  const lines = [`${d.name}: ${d.rows} rows, ${d.duration_s.toFixed(0)} s. Time: ${d.timeBasis}.`, ""];
  const rows = d.channels.map((c) => [
    c.header,
    c.quantityName ?? "(not recognised)",
    c.unit ?? "",
    c.quantityName === null ? "" : `${Math.round(100 * c.confidence)} %`,
    c.standing,
    c.interval_s === null ? "" : `${c.interval_s.toPrecision(2)} s`,
  ]);
  const head = ["column", "is", "unit", "sure", "standing", "read every"];
  const widths = head.map((title, i) => Math.min(44, Math.max(title.length, ...rows.map((r) => r[i]!.length))));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cut(cell, widths[i]!).padEnd(widths[i]!))
      .join("  ")
      .trimEnd();
  lines.push(line(head), ...rows.map(line));
  const remarks = d.channels
    .filter((c) => c.standing !== "measured" && c.quantityName !== null)
    .map((c) => `${c.header}: ${c.standing}; ${c.reasons.at(-1) ?? ""}`);
  const breaks =
    d.stretches.length > 1 ? [`${d.stretches.length} stretches: time breaks off between them and is not bridged.`] : [];
  for (const text of [...remarks, ...breaks, ...d.warnings.map((w) => w.text)]) lines.push("", text);
  return `${lines.join("\n")}\n`;
}

function cut(text: string, width: number): string {
  return text.length <= width ? text : `${text.slice(0, width - 1)}…`;
}
