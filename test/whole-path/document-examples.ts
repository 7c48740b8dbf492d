/** The examples of a document: files by their name, and calls with what they print. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export type Examples = {
  readonly files: { readonly [name: string]: string };
  readonly calls: readonly { readonly call: string; readonly out: string }[];
};

export function examplesOf(document: string): Examples {
  const text = readFileSync(fileURLToPath(new URL(`../../docs/${document}`, import.meta.url)), "utf8");
  const files = [...text.matchAll(/^```(?:csv|json) (\S+)\n([\s\S]*?)^```$/gm)].map(([, name, body]) => [name!, body!]);
  const calls = [...text.matchAll(/^```console\n\$ airtally (.*)\n([\s\S]*?)^```$/gm)].map(([, call, out]) => ({
    call: call!,
    out: out!,
  }));
  return { files: Object.fromEntries(files) as { [name: string]: string }, calls };
}

/** Words of a call as a shell reads them: quotes hold a word together. */
export function wordsOf(call: string): string[] {
  return [...call.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}
