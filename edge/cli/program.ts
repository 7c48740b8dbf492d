/** The command line: its commands, and how they end. */
import { Command, CommanderError } from "commander";
import { CliError } from "./cli-error.ts";
import { addCard } from "./commands/card.ts";
import { addCheck } from "./commands/check.ts";
import { addDescribe } from "./commands/describe.ts";
import { addEngineTemplate } from "./commands/engine-template.ts";
import { addMeter } from "./commands/meter.ts";
import { addSimulate } from "./commands/simulate.ts";

export type CliContext = {
  readonly version: string;
  /** commands of other edges, added by whoever puts the edges together */
  readonly more: readonly ((program: Command) => void)[];
};

/** Runs one call and answers its exit status. */
export async function runCli(args: readonly string[], context: CliContext): Promise<number> {
  process.stdout.once("error", endOfPipe);
  const program = new Command("airtally")
    .description("Is this engine's air signal true? Holds every independent witness of the air against the others.")
    .version(context.version)
    .showHelpAfterError("(airtally COMMAND --help tells more)")
    .exitOverride();
  addDescribe(program, context.version);
  addCheck(program, context.version);
  addEngineTemplate(program);
  addCard(program, context.version);
  addMeter(program, context.version);
  addSimulate(program, context.version);
  for (const add of context.more) add(program);
  for (const command of program.commands) command.exitOverride().showHelpAfterError(false);
  try {
    await program.parseAsync([...args], { from: "user" });
    return 0;
  } catch (error) {
    return endOf(error);
  }
}

/** Whoever reads the output may have read enough (`head`): then the command is done. */
function endOfPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
  process.exit(0);
}

/** The one catch-all of the command line: nothing but a message reaches the user. */
function endOf(error: unknown): number {
  if (error instanceof CommanderError) {
    // Help and version are wanted outputs; every other way commander stops is a call that is off.
    return ["commander.helpDisplayed", "commander.version"].includes(error.code) ? 0 : 2;
  }
  if (error instanceof CliError) {
    process.stderr.write(`airtally: ${error.message}\n`);
    return error.status;
  }
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `airtally: a fault of the tool itself, not of your files: ${message}\nPlease report it with the call and, if you may, the recording.\n`,
  );
  if (process.env.AIRTALLY_DEBUG !== undefined && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  return 1;
}
