/** Recall over headers written without sight of the word list, and the list of what was recognised wrongly. */
import { expect, test } from "vitest";
import { type BlindHeader, judgeHeader, judgeHeaders, printHeaders } from "./judge-headers.ts";

test("at least 95 % of the blind headers are recalled and none is recognised wrongly with confidence", () => {
  const { recall, wrong } = printHeaders("seen", judgeHeaders(new URL("headers.json", import.meta.url)));
  expect(wrong).toEqual([]);
  expect(recall).toBeGreaterThanOrEqual(0.95);
});

test("a wrong quantity, a wrong bank, a value a thousand times off and a decoy taken for a channel are each called wrong", () => {
  const values = ["3.1", "3.6", "9.8", "14.9", "24.6", "20.7", "11.7", "5.7"];
  const truth: BlindHeader = {
    header: "MAF Bank 2 (g/s)",
    language: "en",
    values,
    quantity: "meterFlow",
    bank: 2,
    first: 0.0031,
  };
  const kinds = [
    truth,
    { ...truth, quantity: "fuelMassRate" },
    { ...truth, bank: 1 as const },
    { ...truth, first: 3.1 },
  ];
  expect(kinds.map((entry) => judgeHeader(entry).kind)).toEqual(["right", "wrong", "wrong", "wrong"]);
  expect(judgeHeader({ ...truth, quantity: null }).kind).toBe("wrong");
});
