/**
 * Reading speed: a plain numeric table of 100 MB and 20 columns to typed columns, on one core.
 * Each reader runs in a process of its own on the same file, so that its memory is its own; the ratios come from one run.
 * Goals: 150 MB/s, under 400 MB, 1.5 times DuckDB's reader (one thread, its result copied to the same kind of columns).
 *
 * Run by `npm run speed`. DuckDB is compared where it is installed; else the ratio is to splitting lines and Number().
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readRecording } from "../src/recording/index.ts";

const BYTES = 100_000_000;
const COLUMNS = 20;
const ROUNDS = 3;
const READERS = ["airtally", "duckdb", "split"] as const;
type ReaderName = (typeof READERS)[number];
type Measured = { readonly seconds: number; readonly checksum: number; readonly megabytes: number };

/** Time and 19 channels of two to five digits, seeded: the same bytes every time. */
function writeTable(path: string): void {
  const names = ["Time [s]", ...Array.from({ length: COLUMNS - 1 }, (_, c) => `Signal ${c + 1} [V]`)];
  const lines: string[] = [names.join(",")];
  let length = lines[0]!.length + 1;
  let seed = 1;
  const random = () => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) & 0x7fffffff;
    return seed / 0x7fffffff;
  };
  for (let row = 0; length < BYTES; row++) {
    const cells = [(row / 100).toFixed(2)];
    for (let c = 1; c < COLUMNS; c++) cells.push((random() * 10 ** (1 + (c % 4))).toFixed(c % 3));
    const line = cells.join(",");
    lines.push(line);
    length += line.length + 1;
  }
  writeFileSync(path, `${lines.join("\n")}\n`);
}

async function columnsBy(reader: ReaderName, path: string): Promise<Float64Array[]> {
  if (reader === "airtally") {
    const result = readRecording(readFileSync(path), { name: path });
    if (!result.ok) throw new Error(result.message);
    return result.value.columns.map((column) => column.values);
  }
  if (reader === "duckdb") return columnsByDuckDb(path);
  const lines = readFileSync(path, "latin1").split("\n");
  const rows = lines.length - 2;
  const columns = Array.from({ length: COLUMNS }, () => new Float64Array(rows));
  for (let i = 0; i < rows; i++) {
    const cells = lines[i + 1]!.split(",");
    for (let c = 0; c < COLUMNS; c++) columns[c]![i] = Number(cells[c]);
  }
  return columns;
}

async function columnsByDuckDb(path: string): Promise<Float64Array[]> {
  const name = "@duckdb/node-api";
  const { DuckDBInstance } = await import(/* @vite-ignore */ name);
  const instance = await DuckDBInstance.create(":memory:", { threads: "1" });
  const connection = await instance.connect();
  const result = await connection.run(`select * from read_csv('${path}', all_varchar=false, parallel=false)`);
  const chunks = await result.fetchAllChunks();
  const rows = chunks.reduce((sum: number, chunk: { rowCount: number }) => sum + chunk.rowCount, 0);
  const columns = Array.from({ length: COLUMNS }, () => new Float64Array(rows));
  let offset = 0;
  for (const chunk of chunks) {
    for (let c = 0; c < COLUMNS; c++) {
      const vector = chunk.getColumnVector(c);
      for (let i = 0; i < chunk.rowCount; i++) columns[c]![offset + i] = Number(vector.getItem(i));
    }
    offset += chunk.rowCount;
  }
  return columns;
}

async function measure(reader: ReaderName, path: string): Promise<Measured> {
  const before = process.hrtime.bigint();
  const columns = await columnsBy(reader, path);
  const seconds = Number(process.hrtime.bigint() - before) / 1e9;
  let checksum = 0;
  for (const column of columns) for (const value of column) checksum += value;
  return { seconds, checksum, megabytes: process.resourceUsage().maxRSS / 1000 };
}

function best(reader: ReaderName, path: string): Measured | null {
  let found: Measured | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    try {
      const out = execFileSync(process.execPath, [fileURLToPath(import.meta.url), reader, path], {
        encoding: "utf8",
        stdio: ["ignore", "pipe", "ignore"],
      });
      const one = JSON.parse(out) as Measured;
      if (found === null || one.seconds < found.seconds) found = one;
    } catch {
      return null; // a reader that is not installed is not compared
    }
  }
  return found;
}

function compare(): void {
  const folder = mkdtempSync(join(tmpdir(), "airtally-speed-"));
  const path = join(folder, "table.csv");
  writeTable(path);
  const megabytes = statSync(path).size / 1e6;
  const results = READERS.map((reader) => ({ reader, measured: best(reader, path) }));
  rmSync(folder, { recursive: true });
  const own = results[0]!.measured;
  if (own === null) throw new Error("the project's own reader failed");
  console.log(`reading ${megabytes.toFixed(0)} MB, ${COLUMNS} columns, to typed columns (best of ${ROUNDS})`);
  for (const { reader, measured } of results) {
    if (measured === null) {
      console.log(`  ${reader.padEnd(9)} not installed: not compared`);
      continue;
    }
    const speed = (megabytes / measured.seconds).toFixed(0);
    const ratio = (measured.seconds / own.seconds).toFixed(2);
    const agrees = Math.abs(measured.checksum - own.checksum) <= 1e-9 * Math.abs(own.checksum);
    console.log(
      `  ${reader.padEnd(9)} ${speed.padStart(4)} MB/s  ${measured.megabytes.toFixed(0).padStart(5)} MB  airtally is ${ratio} times as fast${agrees ? "" : "  CHECKSUM DIFFERS"}`,
    );
  }
}

const [reader, path] = process.argv.slice(2);
if (reader !== undefined && path !== undefined) console.log(JSON.stringify(await measure(reader as ReaderName, path)));
else compare();
