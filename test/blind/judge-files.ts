/** A whole blind file: which expected channels were missed, and what was read or recognised wrongly. */
import { readFileSync } from "node:fs";
import { type ChannelSet, quantityInfo, type RecognisedChannel } from "../../src/channels/index.ts";
import { firstAndLast, near, sameBank, tell, type Understood, understand } from "./judge.ts";

type Expected = { readonly quantity: string; readonly bank: 1 | 2 | null };
type BlindFile = {
  readonly file: string;
  readonly rows: number;
  readonly step: number;
  readonly stretches: number;
  readonly channels: readonly (Expected & { readonly unit: string })[];
  readonly values: readonly (Expected & {
    readonly first: number;
    readonly last: number;
    readonly tolerance: number;
  })[];
  readonly nothing: readonly string[];
};
export type Verdict = {
  readonly file: string;
  readonly expected: number;
  readonly missed: string[];
  readonly wrong: string[];
};

function find(set: ChannelSet, { quantity, bank }: Expected): RecognisedChannel | undefined {
  const ids = quantity.split("|");
  return set.channels.find((channel) => ids.includes(channel.quantity) && sameBank(channel, bank, set));
}

function judge(folder: URL, expected: BlindFile): Verdict {
  const bytes = readFileSync(new URL(expected.file, folder));
  const understood = understand(bytes, expected.file);
  const { file, channels } = expected;
  if (typeof understood === "string") {
    return { file, expected: channels.length, missed: [`the whole file: ${understood}`], wrong: [] };
  }
  const missed = channels.filter((channel) => find(understood.set, channel) === undefined);
  return {
    file,
    expected: channels.length,
    missed: missed.map(({ quantity, bank }) => (bank === null ? quantity : `${quantity} bank ${bank}`)),
    wrong: [
      ...wrongTable(expected, understood),
      ...wrongChannels(expected, understood),
      ...wrongValues(expected, understood),
    ],
  };
}

function wrongTable(expected: BlindFile, { recording, set }: Understood): string[] {
  const wrong: string[] = [];
  if (set.rows !== expected.rows) wrong.push(`${set.rows} rows, not ${expected.rows}`);
  const step = recording.time?.interval ?? Number.NaN;
  if (!near(step, expected.step, 1e-3)) wrong.push(`a row every ${step} s, not ${expected.step} s`);
  if (set.stretches.length !== expected.stretches) {
    wrong.push(`${set.stretches.length} stretches, not ${expected.stretches}`);
  }
  return wrong;
}

function wrongChannels(expected: BlindFile, { set }: Understood): string[] {
  const right = expected.channels.map((channel) => find(set, channel));
  const extra = set.channels.filter((channel) => !right.includes(channel));
  const units = expected.channels.filter((channel, i) => {
    const found = right[i];
    return found !== undefined && (found.unit !== channel.unit || quantityInfo(found.quantity).unit !== channel.unit);
  });
  const told = set.channels.filter(({ source }) => expected.nothing.some((header) => source.header.includes(header)));
  return [
    ...extra.map((channel) => `"${channel.source.header}" as ${tell(channel)}`),
    ...told
      .filter((channel) => !extra.includes(channel))
      .map((channel) => `"${channel.source.header}" as ${tell(channel)}`),
    ...units.map(({ quantity, unit }) => `${quantity} is not in ${unit}`),
  ];
}

function wrongValues(expected: BlindFile, { set }: Understood): string[] {
  return expected.values.flatMap((value) => {
    const channel = find(set, value);
    if (channel === undefined) return [];
    const { first, last } = firstAndLast(channel);
    const right = near(first, value.first, value.tolerance) && near(last, value.last, value.tolerance);
    return right ? [] : [`${value.quantity}: ${first} to ${last}, not ${value.first} to ${value.last}`];
  });
}

/** `folder` ends in a slash; the list of what is expected stands beside it, with the same name. */
export function judgeFiles(folder: URL): readonly Verdict[] {
  const text = readFileSync(new URL(`${folder.href.slice(0, -1)}.json`), "utf8");
  return (JSON.parse(text) as { files: readonly BlindFile[] }).files.map((file) => judge(folder, file));
}

export function printFiles(
  set: string,
  verdicts: readonly Verdict[],
): { readonly recall: number; readonly wrong: string[] } {
  const expected = verdicts.reduce((sum, verdict) => sum + verdict.expected, 0);
  const missed = verdicts.reduce((sum, { missed, expected }) => sum + (isWhole(missed) ? expected : missed.length), 0);
  const wrong = verdicts.flatMap(({ file, wrong }) => wrong.map((what) => `${file}: ${what}`));
  const recall = 1 - missed / expected;
  console.log(
    `blind files, ${set}: ${verdicts.length} files, recall ${(100 * recall).toFixed(1)} % of ${expected} channels, wrong ${wrong.length}`,
  );
  if (process.env.AIRTALLY_BLIND_LIST) {
    for (const { file, missed } of verdicts) for (const what of missed) console.log(`missed | ${file} | ${what}`);
    for (const what of wrong) console.log(`wrong | ${what}`);
  }
  return { recall, wrong };
}

function isWhole(missed: readonly string[]): boolean {
  return missed[0]?.startsWith("the whole file") ?? false;
}
