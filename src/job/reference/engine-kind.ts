/** Whether two engines are of one kind, so that one may tell of the other. */
import type { EngineDescription } from "../../engine/index.ts";
import type { ReferenceFile } from "./reference-file-schema.ts";

export type EngineKind = ReferenceFile["engine"];

/** relative: displacements that are rounded differently are still the same */
const SAME_DISPLACEMENT = 0.01;
const SAME_COMPRESSION = 0.3;

export function kindOf(engine: EngineDescription): EngineKind {
  return {
    displacement_cm3: Math.round(engine.displacement * 1e8) / 100,
    cylinders: engine.cylinders,
    banks: engine.banks,
    compressionRatio: engine.compressionRatio,
    fuel: typeof engine.fuel === "string" ? engine.fuel : engine.fuel.stoichiometricAirFuelRatio,
    ignition: engine.ignition,
    induction: engine.induction,
    injection: engine.injection,
    valveTiming: engine.valveTiming,
    metering: engine.metering,
    meters: engine.meters.map((meter) => meter.kind),
  };
}

export type KindComparison = {
  /** "1998 cm3 there, 1596 cm3 here": what makes them two kinds */
  readonly differ: readonly string[];
  /** what one of them does not state, so that nobody knows */
  readonly untold: readonly string[];
};

export function compareKinds(reference: EngineKind, here: EngineKind): KindComparison {
  const differ: string[] = [];
  const untold: string[] = [];
  const compare = (what: string, there: string | number | null, own: string | number | null, same: boolean) => {
    if (there === null || own === null) {
      if (there !== own) untold.push(what);
    } else if (!same) differ.push(`${what} ${there} there and ${own} here`);
  };
  const exactly = (
    key: "cylinders" | "banks" | "fuel" | "ignition" | "induction" | "injection" | "valveTiming" | "metering",
    what: string,
  ) => compare(what, reference[key], here[key], reference[key] === here[key]);
  const [a, b] = [reference.displacement_cm3, here.displacement_cm3];
  compare("displacement in cm3", a, b, Math.abs(a / b - 1) <= SAME_DISPLACEMENT);
  const [c, d] = [reference.compressionRatio, here.compressionRatio];
  compare("compression ratio", c, d, Math.abs((c ?? 0) - (d ?? 0)) <= SAME_COMPRESSION);
  exactly("cylinders", "cylinders");
  exactly("banks", "banks");
  exactly("fuel", "fuel");
  exactly("ignition", "ignition");
  exactly("induction", "induction");
  exactly("injection", "injection");
  exactly("valveTiming", "valve timing");
  exactly("metering", "metering");
  const [there, own] = [reference.meters.join(" and ") || null, here.meters.join(" and ") || null];
  compare("meter", there, own, there === own);
  return { differ, untold };
}
