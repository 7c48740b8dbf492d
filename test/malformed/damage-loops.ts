/** The damage done byte by byte, and what must come of it. */
import { expect } from "vitest";
import { judge, lineOf } from "./damage.ts";
import type { GoodFile } from "./good-files.ts";

const HEAD_LINES = 4;
export const MASKS = [0x01, 0x02, 0x04, 0x08, 0x10, 0x20, 0x40, 0x80];

/** Flips one bit of every `step`-th byte; `masksAt` says which. A flip below the header never costs the whole file. */
export function flipBytes(good: GoodFile, step: number, masksAt: (index: number) => readonly number[]): void {
  const whole = new TextEncoder().encode(good.text);
  let tried = 0;
  let read = 0;
  for (let at = 0; at < whole.length; at += step) {
    const line = lineOf(whole, at);
    for (const mask of masksAt(at / step)) {
      const bytes = whole.slice();
      bytes[at]! ^= mask;
      // A broken or new line ending also harms the line behind it.
      const { outcome, fault } = judge(bytes, good, line, line + 1);
      expect(fault, `byte ${at} with mask ${mask}, line ${line}`).toBeNull();
      if (outcome === "reason")
        expect(line, `byte ${at} with mask ${mask} costs the file`).toBeLessThanOrEqual(HEAD_LINES);
      tried++;
      if (outcome === "recording") read++;
    }
  }
  expect(read).toBeGreaterThan(0.8 * tried);
}

/** Cuts the file at every `step`-th byte. Some rows below the header, it is read whatever the place of the cut. */
export function cutBytes(good: GoodFile, step: number): void {
  const whole = new TextEncoder().encode(good.text);
  for (let length = 0; length < whole.length; length += step) {
    const line = lineOf(whole, length);
    const { outcome, fault } = judge(whole.subarray(0, length), good, line, Number.POSITIVE_INFINITY);
    expect(fault, `cut at ${length}, line ${line}`).toBeNull();
    if (line > 2 * HEAD_LINES) expect(outcome, `cut at ${length}`).toBe("recording");
  }
}
