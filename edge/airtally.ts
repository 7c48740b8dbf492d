/** Puts the edges together: the command line, and the local app as one of its commands. */
import { runCli } from "./cli/program.ts";
import { addOpen } from "./open-command.ts";

declare const __AIRTALLY_VERSION__: string;

process.exitCode = await runCli(process.argv.slice(2), {
  version: __AIRTALLY_VERSION__,
  more: [(program) => addOpen(program, __AIRTALLY_VERSION__)],
});
