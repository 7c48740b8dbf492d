/** airtally open: the local app, on this machine alone. */
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { Command } from "commander";
import { CliError } from "./cli/cli-error.ts";

const FIRST_PORT = 4720;

export function addOpen(program: Command, version: string): void {
  program
    .command("open")
    .description("open the local app in the browser, with a demo job answered")
    .option("--port <number>", "first port to try; the next free one is taken", String(FIRST_PORT))
    .option("--no-browser", "print the address, open nothing")
    .option("--json <file>", "write the address as JSON; - for standard output")
    .option("--force", "replace an existing output file")
    .action((options: { port: string; browser: boolean; json?: string; force?: boolean }) => open(options, version));
}

async function open(
  options: { port: string; browser: boolean; json?: string; force?: boolean },
  version: string,
): Promise<void> {
  const port = Number(options.port);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new CliError(2, `--port ${options.port} is not a port number. Give one from 1 to 65535.`);
  }
  // Loaded here and not above: the other commands start faster without a server.
  const [{ createApp, listen, openBrowser }, { appService }, { threadedService }, { planOutputs }] = await Promise.all([
    import("./server/index.ts"),
    import("./service.ts"),
    import("./threaded-service.ts"),
    import("./cli/output-file.ts"),
  ]);
  const [json] = planOutputs([options.json], [], options.force === true);
  const folder = fileURLToPath(new URL("../web", import.meta.url));
  const app = createApp({
    service: threadedService(
      appService(version),
      () => new Worker(new URL("./work-thread.js", import.meta.url), { workerData: version }),
    ),
    version,
    staticFolder: existsSync(folder) ? folder : null,
    onFault: (error) => process.stderr.write(`airtally: a fault of the tool itself: ${error.message}\n`),
  });
  const { url } = await listen(app, port);
  if (json === null || json === undefined)
    process.stdout.write(`Airtally ${version} is open at ${url}\nStop it with Ctrl+C.\n`);
  else json.write(`${JSON.stringify({ url })}\n`);
  if (options.browser) openBrowser(url);
}
