/** Recall over headers written without sight of the word list, and the list of what was recognised wrongly. */
import { expect, test } from "vitest";
import { judgeHeaders, printHeaders } from "./judge-headers.ts";

test("at least 95 % of the blind headers are recalled and none is recognised wrongly with confidence", () => {
  const { recall, wrong } = printHeaders("seen", judgeHeaders(new URL("headers.json", import.meta.url)));
  expect(wrong).toEqual([]);
  expect(recall).toBeGreaterThanOrEqual(0.95);
});
