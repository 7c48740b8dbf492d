import { expect, it } from "vitest";
import { appService } from "./service.ts";

it("answers the demo with plain data, which a thread can tell and a page can be sent", async () => {
  const demo = await appService("0.0.0").demo();
  if (!demo.ok) throw new Error(demo.message);
  expect(structuredClone(demo)).toEqual(demo);
  expect(JSON.parse(JSON.stringify(demo.value.outcome.result))).toEqual(demo.value.outcome.result);
  expect(demo.value.note).toContain("invented");
});
