import { describe, test } from "vitest";
import { cutBytes, flipBytes, MASKS } from "./damage-loops.ts";
import { GOOD_FILES } from "./good-files.ts";

describe("a flipped byte harms only its own line, or is refused with a reason", () => {
  for (const good of GOOD_FILES) test(good.name, () => flipBytes(good, 1, () => MASKS));
});

describe("a file cut at any byte is read up to the cut, or refused with a reason", () => {
  for (const good of GOOD_FILES) test(good.name, () => cutBytes(good, 1));
});
