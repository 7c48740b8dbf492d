/** One blind header in a tiny table of its own: right, asked (left to the user) or wrong. */
import { readFileSync } from "node:fs";
import { quantityInfo, type RecognisedChannel } from "../../src/channels/index.ts";
import { firstAndLast, near, sameBank, tell, type Understood, understand } from "./judge.ts";

export type BlindHeader = {
  readonly header: string;
  readonly language: string;
  readonly values: readonly string[];
  readonly quantity: string | readonly string[] | null;
  readonly bank: 1 | 2 | null;
  readonly first?: number;
  readonly tolerance?: number;
};

const COLUMN = 3;
const RPM = [820, 1000, 1530, 2070, 3100, 2690, 1730, 1090];

/** A table of time, a companion channel and the column in question, tabs between. */
function tinyTable(entry: BlindHeader): string {
  const comma = entry.values.some((value) => /^-?\d+,\d+/.test(value));
  const companion = entry.quantity === "engineSpeed" ? "Vehicle speed (km/h)" : "Engine speed (rpm)";
  const rows = entry.values.map((value, i) => {
    const time = (0.5 * i).toFixed(1).replace(".", comma ? "," : ".");
    const beside = entry.quantity === "engineSpeed" ? Math.round((RPM[i] ?? 0) / 50) : RPM[i];
    return `${time}\t${beside}\t${value}`;
  });
  return `${[`Time (s)\t${companion}\t${entry.header}`, ...rows].join("\n")}\n`;
}

export type Verdict = {
  readonly entry: BlindHeader;
  readonly kind: "right" | "asked" | "wrong";
  readonly told: string;
};

export function judgeHeader(entry: BlindHeader): Verdict {
  const understood = understand(new TextEncoder().encode(tinyTable(entry)), "invented.tsv");
  if (typeof understood === "string") return { entry, kind: "asked", told: understood };
  const time = understood.recording.time?.columns ?? [];
  if (time.join() !== "1") return { entry, kind: "wrong", told: `time taken from column ${time.join(", ")}` };
  const found = understood.set.channels.find((channel) => channel.source.column === COLUMN);
  if (found !== undefined) return judgeFound(entry, found, understood);
  const left = understood.set.unrecognised.find((column) => column.column === COLUMN);
  return { entry, kind: entry.quantity === null ? "right" : "asked", told: left?.reason ?? "not mentioned at all" };
}

function judgeFound(entry: BlindHeader, found: RecognisedChannel, { set }: Understood): Verdict {
  if (entry.quantity === null || ![entry.quantity].flat().includes(found.quantity)) {
    return { entry, kind: "wrong", told: tell(found) };
  }
  if (!sameBank(found, entry.bank, set)) return { entry, kind: "wrong", told: `${tell(found)}: wrong bank` };
  const { first } = firstAndLast(found);
  if (entry.first !== undefined && !near(first, entry.first, entry.tolerance ?? 0.001)) {
    const unit = quantityInfo(found.quantity).unit;
    return { entry, kind: "wrong", told: `${tell(found)}: first value ${first} ${unit}, not ${entry.first}` };
  }
  return { entry, kind: "right", told: tell(found) };
}

export function judgeHeaders(file: URL): readonly Verdict[] {
  const text = readFileSync(file, "utf8");
  return (JSON.parse(text) as { headers: readonly BlindHeader[] }).headers.map(judgeHeader);
}

export function printHeaders(
  set: string,
  verdicts: readonly Verdict[],
): { readonly recall: number; readonly wrong: string[] } {
  const real = verdicts.filter(({ entry }) => entry.quantity !== null);
  const recall = real.filter(({ kind }) => kind === "right").length / real.length;
  const line = ({ entry, told, kind }: Verdict) =>
    `${kind} | ${entry.language} | ${entry.header} | ${entry.values[0]} | expected ${[entry.quantity].flat().join(" or ") || "nothing"} | ${told}`;
  const wrong = verdicts.filter(({ kind }) => kind === "wrong").map(line);
  const asked = real.filter(({ entry, kind }) => entry.quantity !== null && kind === "asked").length;
  console.log(
    `blind headers, ${set}: recall ${(100 * recall).toFixed(1)} % of ${real.length}, asked ${asked}, ` +
      `confident wrong ${wrong.length} of ${verdicts.length} (${verdicts.length - real.length} are decoys)`,
  );
  if (process.env.AIRTALLY_BLIND_LIST)
    for (const verdict of verdicts) if (verdict.kind !== "right") console.log(line(verdict));
  return { recall, wrong };
}
