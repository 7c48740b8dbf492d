import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, it } from "vitest";
import { check, demo, engineTemplate, wholeRecording } from "./index.ts";
import { jsonSchemas } from "./schemas.ts";

it("publishes its schemas as they are (run vitest with -u after a change)", async () => {
  for (const [file, text] of Object.entries(jsonSchemas()))
    await expect(text).toMatchFileSnapshot(`../../docs/schema/${file}`);
});

// Checked by somebody else's validator (ajv), not by the library that wrote the schema.
it("writes engine files and results that the published schemas accept", () => {
  const schemas = jsonSchemas();
  const ajv = new Ajv2020({ strict: false });
  const engine = ajv.compile(JSON.parse(schemas["engine.schema.json"]!));
  const result = ajv.compile(JSON.parse(schemas["result.schema.json"]!));
  expect(engine(JSON.parse(engineTemplate()))).toBe(true);
  const demoJob = demo();
  const engineFile = JSON.parse(demoJob.engine);
  expect(engine(engineFile)).toBe(true);
  const outcome = check({
    recordings: [wholeRecording(demoJob.recording.name, new TextEncoder().encode(demoJob.recording.text), "0")],
    engine: demoJob.engine,
    channels: null,
    assumptions: null,
    toolVersion: "0.0.0",
    seed: 0,
  });
  if (!outcome.ok) throw new Error(outcome.message);
  expect(result(JSON.parse(JSON.stringify(outcome.value.result)))).toBe(true);
  expect(result({ ...outcome.value.result, seed: "none" })).toBe(false);
  expect(engine({ ...engineFile, displacment: "2 L" })).toBe(false);
});
