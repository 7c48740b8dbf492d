import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { CATALOGUE, CHECKS } from "../../findings/index.ts";
import { cautionTexts } from "../cautions.ts";
import type { RecordingCard } from "../recording-card.ts";
import { jsonSchemas } from "../schemas.ts";
import { recordingCard } from "./recording-card.ts";
import { STANDARD_PARTS } from "./standard-parts.ts";

const card: RecordingCard = recordingCard("0.0.0");

describe("the standard recording", () => {
  it("has the parts of the design in their order, with their seconds", () => {
    expect(card.parts.map((part) => part.id)).toEqual([
      ...["key-on", "warm-idle", "idle-with-loads", "light-load", "snap", "full-load", "overrun", "key-off"],
    ]);
    const seconds = new Map(card.parts.map((part) => [part.id, part.seconds]));
    for (const [part, length] of [
      ["key-on", 10],
      ["warm-idle", 60],
      ["light-load", 60],
      ["key-off", 10],
    ] as const)
      expect(seconds.get(part)).toBe(length);
    expect(card.seconds).toBe(card.parts.reduce((sum, part) => sum + part.seconds, 0));
  });

  it("says of every part what skipping it leaves open, by the titles of the catalogue", () => {
    for (const part of card.parts) expect(part.leavesOpen.length, part.id).toBeGreaterThan(0);
    expect(card.parts[0]!.leavesOpen).toContainEqual({
      cause: "map-biased",
      title: CATALOGUE.find((c) => c.id === "map-biased")!.title,
    });
  });

  it("leaves no cause without a part in which it shows, but what only a check can tell", () => {
    const shown = new Set(STANDARD_PARTS.flatMap((part) => part.regions.flatMap((region) => region.leavesOpen)));
    const hidden = CATALOGUE.map((c) => c.id).filter((id) => !shown.has(id));
    expect(hidden.filter((id) => !["vane-tilted", "misfire"].includes(id))).toEqual([]);
  });

  it("cautions before the pull, and has a text for every caution that a part or a check names", () => {
    expect(card.parts.find((part) => part.id === "full-load")!.cautions.join(" ")).toMatch(/second person.*lean/is);
    for (const { id, cautions } of [...CHECKS, ...STANDARD_PARTS])
      expect(
        cautionTexts(cautions).every((text) => text.length > 20),
        id,
      ).toBe(true);
  });

  it("is as its published schema says", () => {
    const valid = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemas()["card.schema.json"]!));
    expect(valid(JSON.parse(JSON.stringify(card)))).toBe(true);
    expect(valid({ ...card, seconds: "long" })).toBe(false);
  });
});
