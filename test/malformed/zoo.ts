/** Files that are no good recordings, each with the reason it must get, or the warning with which it is read. All invented. */
const text = (content: string) => new TextEncoder().encode(content);
const bytes = (...values: number[]) => Uint8Array.from(values);
const filled = (length: number, make: (i: number) => number) => Uint8Array.from({ length }, (_, i) => make(i));
const signed = (signature: string) =>
  filled(4_000, (i) => (i < signature.length ? signature.charCodeAt(i) : (i * 7) % 251));
const header = "Time [s],Engine Speed [1/min],Manifold Pressure [kPa]";
const rows = (count: number) => Array.from({ length: count }, (_, i) => `${i / 10},${800 + (i % 40)},${30 + (i % 9)}`);

export type Refused = {
  readonly title: string;
  readonly bytes: () => Uint8Array;
  readonly reason: string;
  readonly line?: number;
};

export const REFUSED: readonly Refused[] = [
  { title: "nothing", bytes: () => bytes(), reason: "empty-file" },
  { title: "blank lines", bytes: () => text("\n\r\n   \n\t\n"), reason: "empty-file" },
  { title: "a byte-order mark and nothing else", bytes: () => bytes(0xef, 0xbb, 0xbf), reason: "empty-file" },
  { title: "random bytes", bytes: () => filled(5_000, (i) => (i * i * 31 + i * 7) % 256), reason: "binary-file" },
  { title: "zeros", bytes: () => filled(5_000, () => 0), reason: "binary-file" },
  { title: "a Parquet file", bytes: () => signed("PAR1"), reason: "foreign-format" },
  { title: "an MDF file", bytes: () => signed("MDF     4.10"), reason: "foreign-format" },
  {
    title: "an old spreadsheet",
    bytes: () => bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1),
    reason: "foreign-format",
  },
  { title: "a picture", bytes: () => bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), reason: "foreign-format" },
  { title: "a zip archive", bytes: () => signed("PK\u0003\u0004"), reason: "compressed" },
  { title: "a gzip file", bytes: () => bytes(0x1f, 0x8b, 8, 0, 0, 0, 0, 0), reason: "compressed" },
  { title: "a header without rows", bytes: () => text(`${header}\n`), reason: "no-rows", line: 1 },
  { title: "a header, units and no rows", bytes: () => text("Time;Speed;Pressure\ns;1/min;kPa\n"), reason: "no-rows" },
  {
    title: "a letter",
    bytes: () => text("Dear customer,\n\nthe engine runs badly when cold.\n\nRegards\n"),
    reason: "no-table",
  },
  {
    title: "columns of words only",
    bytes: () => text("Time,State\nmorning,on\nnoon,off\nnight,on\n"),
    reason: "no-numeric-column",
  },
  {
    title: "a web page",
    bytes: () =>
      text("<!DOCTYPE html>\n<html><head><title>x</title></head>\n<body>\n<p>Not found</p>\n</body></html>\n"),
    reason: "no-table",
  },
  { title: "10,001 columns", bytes: () => text(`${manyColumns(10_001)}\n`), reason: "too-many-columns", line: 1 },
  {
    title: "one line of 50 MB without an end",
    bytes: () => filled(50_000_000, () => 0x31),
    reason: "line-too-long",
    line: 1,
  },
  { title: "a good head, then one line of 50 MB", bytes: () => longLineAfter(), reason: "line-too-long", line: 22 },
  {
    title: "more cells than names",
    bytes: () => text(`a,b\n${rows(9).join("\n")}\n`),
    reason: "ambiguous-layout",
    line: 1,
  },
];

function manyColumns(count: number): string {
  const names = Array.from({ length: count }, (_, i) => `Signal ${i}`).join(",");
  const values = Array.from({ length: count }, (_, i) => i % 10).join(",");
  return [names, values, values, values].join("\n");
}

function longLineAfter(): Uint8Array {
  const head = text(`${header}\n${rows(20).join("\n")}\n`);
  const all = new Uint8Array(head.length + 50_000_000).fill(0x31);
  all.set(head);
  return all;
}

export type ReadWithWarning = {
  readonly title: string;
  readonly text: string;
  readonly warning: string;
  readonly rows: number;
};

export const READ_WITH_WARNING: readonly ReadWithWarning[] = [
  { title: "cut in a row", text: `${header}\n${rows(20).join("\n")}\n2.0,8`, warning: "cut", rows: 21 },
  {
    title: "a row too short",
    text: `${header}\n${rows(9).join("\n")}\n0.9,800\n${rows(9).join("\n")}\n`,
    warning: "too-short",
    rows: 18,
  },
  { title: "a row too long", text: `${header}\n${rows(9).join("\n")}\n0.9,800,33,4\n`, warning: "too-long", rows: 9 },
  {
    title: "a quote that is never closed",
    text: `${header}\n${rows(9).join("\n")}\n0.9,"800,33\n${rows(9).join("\n")}\n`,
    warning: "unbalanced-quote",
    rows: 18,
  },
  {
    title: "a quote that swallows no delimiter",
    text: `${header}\n${rows(9).join("\n")}\n0.9,800,"33\n${rows(9).join("\n")}\n`,
    warning: "unbalanced-quote",
    rows: 18,
  },
  {
    title: "NUL bytes where power failed",
    text: `${header}\n${rows(40).join("\n")}\n4.0,80\0\0\0,33\n`,
    warning: "nul-bytes",
    rows: 41,
  },
  {
    title: "the header again",
    text: `${header}\n${rows(5).join("\n")}\n${header}\n${rows(5).join("\n")}\n`,
    warning: "header-again",
    rows: 10,
  },
  {
    title: "a clock that runs backward",
    text: `${header}\n${rows(5).join("\n")}\n0.1,800,33\n0.2,800,33\n`,
    warning: "time-backward",
    rows: 7,
  },
  {
    title: "a gap",
    text: `${header}\n${rows(5).join("\n")}\n60,800,33\n60.1,800,33\n60.2,800,33\n`,
    warning: "gap",
    rows: 8,
  },
  { title: "no names", text: `${rows(9).join("\n")}\n`, warning: "no-header", rows: 9 },
  {
    title: "a word among the numbers",
    text: `${header}\n${rows(9).join("\n")}\n0.9,ERR,33\n`,
    warning: "words-among-numbers",
    rows: 10,
  },
  {
    title: "a side table",
    text: `${header}\n${rows(9).join("\n")}\n\nName,Smallest,Largest\nSpeed,800,839\nPressure,30,38\nTemperature,20,21\n`,
    warning: "table-left-out",
    rows: 9,
  },
];
