/** airtally engine-template: a starting engine file, or a starting assumptions file. */
import type { Command } from "commander";
import { assumptionsTemplate, engineTemplate } from "../../../src/job/index.ts";
import { planOutputs } from "../output-file.ts";

export function addEngineTemplate(program: Command): void {
  program
    .command("engine-template")
    .description("print a starting engine file (JSON) of an invented engine, to be changed")
    .option("--assumptions", "print a starting assumptions file instead, with every key at its usual value")
    .option("--json <file>", "write it to a file; - for standard output", "-")
    .option("--force", "replace an existing output file")
    .action((options: { assumptions?: boolean; json: string; force?: boolean }) => {
      const [out] = planOutputs([options.json], [], options.force === true);
      out!.write(options.assumptions === true ? assumptionsTemplate() : engineTemplate());
    });
}
