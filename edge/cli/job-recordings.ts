/**
 * The recordings of one job: those named on the command line and those of the visit file, each once (by real path), with what the
 * visit file states of them. The visit file's come first, in its order.
 */
import { dirname, resolve } from "node:path";
import { parseVisitFile, severalVisits, type VisitEntry } from "../../src/job/index.ts";
import { CliError, unusable } from "./cli-error.ts";
import { findInput, readTextInput } from "./input-file.ts";
import { type RecordingFile, recordingFile } from "./recording-file.ts";

export function jobRecordings(paths: readonly string[], visitPath: string | undefined, rate: number | null) {
  const visit = visitPath === undefined ? null : readTextInput(visitPath);
  const entries = visit === null ? [] : entriesOf(visit.text, visitPath!);
  const files = new Map<string, RecordingFile>();
  const add = (path: string, named: string, entry: VisitEntry | null) => {
    const { realPath } = findInput(path);
    if (files.has(realPath)) throw new CliError(2, `${named} names the recording ${path} twice. Name it once.`);
    const file = recordingFile(path, rate);
    const told = entry === null ? {} : { site: entry.site, visit: entry.visit };
    files.set(realPath, { ...file, input: { ...file.input, ...told } });
  };
  for (const entry of entries) add(resolve(dirname(visitPath!), entry.file), visitPath!, entry);
  const listed = new Set(files.keys());
  for (const path of paths) {
    // Named here and in the visit file: one recording, with what the visit file states.
    if (listed.has(findInput(path).realPath)) continue;
    if (severalVisits(entries)) {
      throw new CliError(
        2,
        `${path} is not in ${visitPath}, which names several visits. Add it there, with the visit it is of.`,
      );
    }
    add(path, "The command line", null);
  }
  if (files.size === 0)
    throw new CliError(2, "No recording is named. Name one or more, or a visit file (--visit) that lists them.");
  return { recordings: [...files.values()], visitFile: visit === null ? [] : [visit.file] };
}

function entriesOf(text: string, path: string): readonly VisitEntry[] {
  const parsed = parseVisitFile(text);
  if (!parsed.ok) throw unusable(parsed, path);
  return parsed.value;
}
