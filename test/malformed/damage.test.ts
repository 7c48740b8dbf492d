import { expect, test } from "vitest";
import { judge } from "./damage.ts";
import { GOOD_FILES } from "./good-files.ts";

test("the judge of damage sees a changed value, a lost row and a shifted column outside the damaged lines", () => {
  const good = GOOD_FILES[0]!;
  const lines = good.text.split("\n");
  const judged = (changed: readonly string[]) => judge(new TextEncoder().encode(changed.join("\n")), good, 3, 4).fault;
  expect(judged(lines)).toBeNull();
  expect(judged(lines.with(9, lines[9]!.replace(",8", ",7")))).toMatch(/line 10, column 2 changed/);
  expect(judged(lines.toSpliced(9, 1))).not.toBeNull();
  expect(judged(lines.map((line) => line.replace(",", ",5,").replace(/,[^,]*$/, "")))).not.toBeNull();
});
