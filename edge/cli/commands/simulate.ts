/** airtally simulate: a recording of an invented engine, with the truth beside it. */
import { type Command, Option } from "commander";
import { type SimulateOptions, simulate, simulateChoices } from "../../../src/job/index.ts";
import { describeFailure } from "../../../src/quantities/index.ts";
import { CliError } from "../cli-error.ts";
import { planOutputs } from "../output-file.ts";
import { choicesText, simulatedText } from "./simulate-text.ts";

type Outputs = {
  list?: boolean;
  out?: string;
  engineOut?: string;
  truth?: string;
  json?: string;
  force?: boolean;
};
/** As commander names them: an option that may be repeated is named after one of them. */
type Options = Outputs & Omit<SimulateOptions, "faults"> & { fault?: string[] };

export function addSimulate(program: Command, version: string): void {
  const several = (one: string, all: string[] = []) => [...all, one];
  const choice = (flags: string, description: string, ...words: string[]) =>
    new Option(flags, description).choices(words);
  program
    .command("simulate")
    .description("record an invented engine, healthy or with faults of your choice; the truth is written beside it")
    .option("--list", "name the families, protocols, faults and recorders there are, and simulate nothing")
    .optionsGroup("The engine:")
    .option("--family <name>", "kind of engine; petrol-with-meter if left out")
    .option("--engine-number <number>", "which engine of the family, within healthy tolerances; the seed if left out")
    .option("--tolerances <share>", "of the healthy tolerances, 0 (as drawn) to 1 (usual)")
    .addOption(choice("--probe <kind>", "another control probe than the family's", "narrow", "wide"))
    .option("--fault <cause=size>", "planted fault, such as manifold-leak=3.5mm2; may be repeated", several)
    .optionsGroup("What is done with it, and where:")
    .option("--protocol <name>", "what is done while it records; standard-and-road if left out")
    .option("--duration <time>", 'of the whole recording, such as "6 min"; what the protocol takes if left out')
    .option("--altitude <length>", 'of the site; "100 m" if left out')
    .option("--barometer <pressure>", "in place of the altitude, such as 98.9kPa")
    .option("--temperature <temperature>", 'outside; "18 degC" if left out')
    .option("--humidity <share>", "relative; 50% if left out")
    .option("--seed <number>", "of everything random: the road, the noise; 1 if left out")
    .optionsGroup("How it is recorded:")
    .addOption(choice("--recorder <name>", "a polled tester (usual) or a workshop logger", "tester", "logger"))
    .option("--rate <hz>", "readings a second of the tester (14.3), rows a second of the logger (10); 1 to 100")
    .addOption(choice("--rows <kind>", "the tester's", "each-reading", "each-round", "sparse"))
    .addOption(choice("--names <kind>", "of the columns", "long", "short"))
    .addOption(choice("--units <place>", "where they stand", "brackets", "parentheses", "row", "none"))
    .addOption(choice("--delimiter <kind>", "between the columns", "comma", "semicolon", "tab"))
    .addOption(choice("--decimal-mark <kind>", "with a comma, the delimiter is a semicolon", "point", "comma"))
    .addOption(choice("--time <kind>", "how it is told", "seconds", "milliseconds", "clock"))
    .addOption(choice("--line-end <kind>", "of the recording", "lf", "crlf"))
    .option("--dropouts <number>", "how often a minute the recording breaks off; 0 if left out")
    .option("--dropout-length <time>", 'on average; "2 s" if left out')
    .option("--stuck <text>", 'a channel that sticks: "MAP from 60 s for 30 s"; may be repeated', several)
    .optionsGroup("What is written:")
    .option("--out <file>", "the recording; - for standard output")
    .option("--engine-out <file>", "the engine file that belongs to it")
    .option("--truth <file>", "what really happened, ten rows a second")
    .option("--json <file>", "what was simulated (airtally-simulate/1); - for standard output")
    .option("--force", "replace existing output files")
    .action((options: Options) => run(options, version));
}

async function run(options: Options, version: string): Promise<void> {
  const { out, engineOut, truth, json } = options;
  const files = [out, engineOut, truth, json];
  const [recordingFile, engineFile, truthFile, jsonFile] = planOutputs(files, [], options.force === true);
  if (options.list === true) {
    if ([out, engineOut, truth].some((file) => file !== undefined))
      throw new CliError(2, "--list simulates nothing, so there is no recording to write. Leave one of the two away.");
    const choices = simulateChoices(version);
    jsonFile?.write(`${JSON.stringify(choices, null, 2)}\n`);
    if (json !== "-") process.stdout.write(await choicesText(choices, width()));
    return;
  }
  const made = simulate({ ...options, faults: options.fault ?? [] }, version);
  if (!made.ok) throw new CliError(2, describeFailure(made));
  const { sheet, recording, engine, truth: truthText } = made.value;
  recordingFile?.write(recording);
  engineFile?.write(engine);
  truthFile?.write(truthText);
  jsonFile?.write(`${JSON.stringify(sheet, null, 2)}\n`);
  if (!files.includes("-")) process.stdout.write(await simulatedText(sheet, { out, engineOut, truth, json }, width()));
}

function width(): number {
  return Math.min(process.stdout.columns ?? 96, 110);
}
