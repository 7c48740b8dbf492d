import { expect, it } from "vitest";
import { bitsWords } from "./bits-words.ts";

it("says more of a check that tells more", () => {
  expect([0.01, 0.1, 0.4, 0.9].map(bitsWords)).toEqual([
    "tells little",
    "tells something",
    "tells a good deal",
    "decides much",
  ]);
});
