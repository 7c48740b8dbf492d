import { describe, expect, it } from "vitest";
import { EMPTY_DRAFT, partsOf, problemsOf, withRecordings } from "./job.ts";

const file = (name: string) => new File(["x"], name, { lastModified: 1 });

describe("a draft", () => {
  it("holds each recording once, in the order it came", () => {
    const draft = withRecordings(withRecordings(EMPTY_DRAFT, [file("a"), file("b")]), [file("a"), file("c")]);
    expect(draft.recordings.map((f) => f.name)).toEqual(["a", "b", "c"]);
  });

  it("names everything that stands in the way of a run", () => {
    expect(problemsOf(EMPTY_DRAFT).map((p) => p.path)).toEqual([
      "recordings",
      "displacement",
      "cylinders",
      "fuel",
      "metering",
    ]);
  });

  it("sends no channel list where nothing was corrected", () => {
    expect(partsOf(EMPTY_DRAFT).channelsText).toBeNull();
    expect(JSON.parse(partsOf(EMPTY_DRAFT).engineText)).toEqual({ format: "airtally-engine/1", strokes: 4 });
  });
});
