/** Recall over whole files in layouts invented without sight of the readers, and what was read or recognised wrongly. */
import { expect, test } from "vitest";
import { judgeFiles, printFiles } from "./judge-files.ts";

test("of the blind files at least 95 % of the channels are recalled, and rows, step, values and decoys are right", () => {
  const { recall, wrong } = printFiles("seen", judgeFiles(new URL("files/", import.meta.url)));
  expect(wrong).toEqual([]);
  expect(recall).toBeGreaterThanOrEqual(0.95);
});
