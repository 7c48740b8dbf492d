import { describe, expect, it } from "vitest";
import { parseChannelList } from "../src/channels/index.ts";
import { type Correction, channelListText, withCorrection } from "./channel-list-text.ts";

const MAP: Correction = { column: 4, header: "MAP", quantity: "manifoldPressure", unit: "kPa", bank: null };

describe("channelListText", () => {
  it("writes a channel list that the tool reads as it was meant", () => {
    const text = channelListText([
      MAP,
      { column: 7, header: "", quantity: null, unit: null, bank: null },
      { column: 8, header: "LTFT B2", quantity: "longTrim", unit: "%", bank: 2 },
    ]);
    const list = parseChannelList(text ?? "");
    expect(list.ok && list.value.channels).toEqual([
      { column: null, header: "MAP", quantity: "manifoldPressure", unit: "kPa", bank: null },
      { column: 7, header: null, quantity: null, unit: null, bank: null },
      { column: null, header: "LTFT B2", quantity: "longTrim", unit: "%", bank: 2 },
    ]);
  });

  it("writes nothing where nothing was corrected", () => {
    expect(channelListText([])).toBeNull();
  });
});

describe("withCorrection", () => {
  it("lets a later correction of a column take the place of the earlier", () => {
    const later = { ...MAP, quantity: "boostPressure" };
    expect(withCorrection([MAP, { ...MAP, column: 9, header: "other" }], later)).toEqual([
      { ...MAP, column: 9, header: "other" },
      later,
    ]);
  });
});
