import { expectTypeOf, it } from "vitest";
import type * as drawn from "../../meter-result.ts";
import type { AmbientSheet, BenchSheetResult, CurveSheet, FitSheet, MeterConversion } from "./meter-result-schema.ts";

/** Whether values may be changed is not part of the contract of a file. */
type Fixed<T> = T extends (infer Item)[]
  ? readonly Fixed<Item>[]
  : T extends object
    ? { readonly [key in keyof T]: Fixed<T[key]> }
    : T;

it("describes exactly what the pages draw", () => {
  expectTypeOf<Fixed<MeterConversion>>().toExtend<drawn.MeterConversion>();
  expectTypeOf<Fixed<CurveSheet>>().toExtend<drawn.CurveSheet>();
  expectTypeOf<Fixed<AmbientSheet>>().toExtend<drawn.AmbientSheet>();
  expectTypeOf<Fixed<FitSheet>>().toExtend<drawn.FitSheet>();
  expectTypeOf<Fixed<BenchSheetResult>>().toExtend<drawn.BenchSheetResult>();
  expectTypeOf<drawn.MeterConversion>().toExtend<Fixed<MeterConversion>>();
  expectTypeOf<drawn.CurveSheet>().toExtend<Fixed<CurveSheet>>();
  expectTypeOf<drawn.AmbientSheet>().toExtend<Fixed<AmbientSheet>>();
  expectTypeOf<drawn.FitSheet>().toExtend<Fixed<FitSheet>>();
  expectTypeOf<drawn.BenchSheetResult>().toExtend<Fixed<BenchSheetResult>>();
});
