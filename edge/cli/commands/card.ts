/** airtally card: the standard recording, to print. */
import type { Command } from "commander";
import { recordingCard } from "../../../src/job/index.ts";
import { planOutputs } from "../output-file.ts";

type Options = { html?: string; json?: string; force?: boolean };

export function addCard(program: Command, version: string): void {
  program
    .command("card")
    .description("print the standard recording: what to record, part by part, and what a skipped part leaves open")
    .option("--html <file>", "write it as one HTML file to print on A4 or Letter; - for standard output")
    .option("--json <file>", "write it as data (airtally-card/1); - for standard output")
    .option("--force", "replace existing output files")
    .action((options: Options) => run(options, version));
}

async function run(options: Options, version: string): Promise<void> {
  const [html, json] = planOutputs([options.html, options.json], [], options.force === true);
  const card = recordingCard(version);
  json?.write(`${JSON.stringify(card, null, 2)}\n`);
  const { renderRecordingCardHtml, renderRecordingCardText } = await import("../../../src/report/index.ts");
  html?.write(renderRecordingCardHtml({ card }));
  if (html == null && json == null)
    process.stdout.write(renderRecordingCardText(card, { width: Math.min(process.stdout.columns ?? 96, 110) }));
}
