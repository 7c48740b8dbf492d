import { expectTypeOf, it } from "vitest";
import type { z } from "zod";
import type { AirtallyResult } from "./result.ts";
import type { RESULT_SCHEMA } from "./result-schema.ts";

it("describes exactly the type of the result", () => {
  type Schema = z.infer<typeof RESULT_SCHEMA>;
  expectTypeOf<keyof Schema>().toEqualTypeOf<keyof AirtallyResult>();
  expectTypeOf<Schema>().toExtend<AirtallyResult>();
});
