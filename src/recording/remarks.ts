/** Counts what was met on the way through a file, by kind, with the first lines, so that ten thousand bad rows make one sentence. */
import type { Warning } from "../quantities/index.ts";

export class Remarks {
  private readonly seen = new Map<string, number[]>();
  private readonly counts = new Map<string, number>();

  add(code: string, line: number): void {
    this.counts.set(code, (this.counts.get(code) ?? 0) + 1);
    const lines = this.seen.get(code) ?? [];
    if (lines.length < 3) lines.push(line);
    this.seen.set(code, lines);
  }

  count(code: string): number {
    return this.counts.get(code) ?? 0;
  }

  lines(code: string): readonly number[] {
    return this.seen.get(code) ?? [];
  }

  /** One warning where the code was seen; `say` gets the number and the places in words ("line 12", "lines 3, 9, 27, ..."). */
  warning(code: string, say: (count: number, places: string) => string): Warning[] {
    const count = this.count(code);
    if (count === 0) return [];
    const lines = this.lines(code);
    const places = `${count === 1 ? "line" : "lines"} ${lines.join(", ")}${count > lines.length ? ", ..." : ""}`;
    return [{ code, text: say(count, places) }];
  }
}
