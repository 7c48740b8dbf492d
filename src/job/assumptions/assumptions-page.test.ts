import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { ASSUMPTION_TABLE } from "../../tally/index.ts";
import { assumptionsTemplate } from "./assumptions-template.ts";
import { readAssumptions } from "./read-assumptions.ts";

const PAGE = new URL("../../../docs/assumptions.md", import.meta.url);

it("has every assumption of the table on its page, with value and reason (run vitest with -u after a change)", async () => {
  const [text] = readFileSync(PAGE, "utf8").split("| key | value | why |");
  const rows = ASSUMPTION_TABLE.map(
    ({ key, value, unit, reason }) => `| ${key} | ${value}${unit === "1" ? "" : ` ${unit}`} | ${reason} |`,
  );
  const page = [`${text}| key | value | why |`, "| --- | --- | --- |", ...rows, ""].join("\n");
  await expect(page).toMatchFileSnapshot("../../../docs/assumptions.md");
});

it("reads its own template as the table itself, and lays a change over it", () => {
  expect(readAssumptions(assumptionsTemplate())).toEqual(readAssumptions(null));
  const changed = readAssumptions('{ "note": "tighter", "meterScale": 0.01 }');
  expect(changed.ok && changed.value.meterScale).toBe(0.01);
});

it("refuses an unknown key with the nearest known one, and values that are none, with their place", () => {
  expect(readAssumptions('{ "meterscale": 0.01 }')).toMatchObject({
    ok: false,
    remedy: expect.stringContaining('"meterScale"'),
  });
  for (const bad of ['{ "meterScale": "2 %" }', '{ "meterScale": 0 }', "[0.02]"])
    expect(readAssumptions(bad)).toMatchObject({ ok: false, reason: "assumptions-not-valid" });
  expect(readAssumptions('{ "meterScale": 0.01,, }')).toMatchObject({ reason: "assumptions-not-json" });
});
