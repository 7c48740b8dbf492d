/** Columns that grow row by row: numbers in typed arrays, words kept sparsely beside them. */
import { QUALITY } from "../../quantities/index.ts";
import type { TextCells } from "../recording.ts";

/** Words beyond this many in one column are free text (notes, coordinates); the cells are kept as "not a number" only. */
const MAX_WORDS = 50_000;

type Words = { rows: number[]; words: number[]; readonly index: Map<string, number> };

export class ColumnStore {
  readonly count: number;
  readonly values: Float64Array[];
  readonly quality: Uint8Array[];
  lines: Uint32Array;
  rows = 0;
  capacity: number;
  private readonly words: (Words | undefined)[];

  constructor(count: number, expectedRows: number) {
    this.count = count;
    this.capacity = Math.max(16, expectedRows);
    this.values = Array.from({ length: count }, () => new Float64Array(this.capacity));
    this.quality = Array.from({ length: count }, () => new Uint8Array(this.capacity));
    this.lines = new Uint32Array(this.capacity);
    this.words = new Array(count).fill(undefined);
  }

  /** Room for one more row. */
  ensureRow(): void {
    if (this.rows < this.capacity) return;
    this.capacity = Math.ceil(this.capacity * 1.5) + 16;
    for (let c = 0; c < this.count; c++) {
      this.values[c] = grown(this.values[c]!, new Float64Array(this.capacity));
      this.quality[c] = grown(this.quality[c]!, new Uint8Array(this.capacity));
    }
    this.lines = grown(this.lines, new Uint32Array(this.capacity));
  }

  /** Undoes what was written to a row that was not taken. */
  clearRow(): void {
    for (let c = 0; c < this.count; c++) {
      this.quality[c]![this.rows] = QUALITY.good;
      const words = this.words[c];
      if (words === undefined || words.rows.at(-1) !== this.rows) continue;
      words.rows.pop();
      const index = words.words.pop()!;
      if (index === words.index.size - 1 && !words.words.includes(index))
        words.index.delete([...words.index.keys()].at(-1)!);
    }
  }

  /** The cell of the row above once more. */
  repeatAbove(column: number, row: number): void {
    const code = this.quality[column]![row - 1]!;
    this.values[column]![row] = this.values[column]![row - 1]!;
    this.quality[column]![row] = code;
    const words = this.words[column];
    if (code !== QUALITY.notANumber || words === undefined || words.rows.at(-1) !== row - 1) return;
    words.rows.push(row);
    words.words.push(words.words.at(-1)!);
  }

  setMissing(column: number, row: number): void {
    this.values[column]![row] = Number.NaN;
    this.quality[column]![row] = QUALITY.missing;
  }

  setNumber(column: number, row: number, value: number): void {
    this.values[column]![row] = value;
    this.quality[column]![row] = QUALITY.good;
  }

  setWord(column: number, row: number, word: string): void {
    this.values[column]![row] = Number.NaN;
    this.quality[column]![row] = QUALITY.notANumber;
    let words = this.words[column];
    if (words === undefined) {
      words = { rows: [], words: [], index: new Map() };
      this.words[column] = words;
    }
    let index = words.index.get(word);
    if (index === undefined) {
      if (words.index.size >= MAX_WORDS) return;
      index = words.index.size;
      words.index.set(word, index);
    }
    words.rows.push(row);
    words.words.push(index);
  }

  /** The columns cut to the rows written, without copying. */
  column(c: number): { values: Float64Array; quality: Uint8Array; texts: TextCells | null } {
    const words = this.words[c];
    return {
      values: this.values[c]!.subarray(0, this.rows),
      quality: this.quality[c]!.subarray(0, this.rows),
      texts:
        words === undefined
          ? null
          : {
              rows: Uint32Array.from(words.rows),
              words: Uint32Array.from(words.words),
              dictionary: [...words.index.keys()],
            },
    };
  }
}

function grown<T extends Float64Array | Uint8Array | Uint32Array>(old: T, fresh: T): T {
  fresh.set(old as never);
  return fresh;
}
