/**
 * What one engine may tell of another: the unknowns as physical functions, each how a witness departs (ln) in a stated state
 * of the engine. The columns of a job's basis mean nothing to another job; these functions do.
 */
import type { TallyModel, TallyWitness } from "../tally-model.ts";

export type ReferenceQuantity = {
  readonly id: string;
  /** in which witness it stands; "fuel" is the first fuel witness of the engine */
  readonly witness: "meter" | "meter-2" | "pressure" | "fuel";
  /** names of the unknowns that make it up */
  readonly unknowns: readonly string[];
  readonly along: "flow" | "speed-and-pressure" | "nothing";
  /** -1: told as the efficiency itself, which the pressure witness holds the other way round */
  readonly sign: 1 | -1;
  /** whether engines of one kind have it in common, or only this very engine has it (its sensors) */
  readonly of: "kind" | "engine";
};

export const REFERENCE_QUANTITIES: readonly ReferenceQuantity[] = [
  ...(["meter", "meter-2"] as const).map((id) => ({
    id,
    witness: id,
    unknowns: [`${id} scale`, `${id} curve`],
    along: "flow" as const,
    sign: 1 as const,
    of: "kind" as const,
  })),
  {
    id: "breathing",
    witness: "pressure",
    unknowns: ["breathing level", "residual-gas strength", "breathing shape"],
    along: "speed-and-pressure",
    sign: -1,
    of: "kind",
  },
  single("charge-heating", "pressure", "charge heating", "kind"),
  {
    id: "fuel",
    witness: "fuel",
    unknowns: ["fuel delivery", "fuel shape"],
    along: "flow",
    sign: 1,
    of: "kind",
  },
  single("injector-dead-time", "fuel", "injector dead time", "kind"),
  {
    id: "computer-table",
    witness: "fuel",
    unknowns: ["engine computer's table, level", "engine computer's table, shape"],
    along: "speed-and-pressure",
    sign: 1,
    of: "kind",
  },
  single("pressure-sensor-offset", "pressure", "pressure sensor offset", "engine"),
  single("heat-soak", "pressure", "heat soak", "engine"),
];

function single(
  id: string,
  witness: ReferenceQuantity["witness"],
  unknown: string,
  of: "kind" | "engine",
): ReferenceQuantity {
  return { id, witness, unknowns: [unknown], along: "nothing", sign: 1, of };
}

/** Whether this job's unknowns hold all of it. */
export function holdsQuantity(model: TallyModel, quantity: ReferenceQuantity): boolean {
  return quantity.unknowns.every((name) => model.unknowns.some((u) => u.name === name));
}

export function witnessOf(model: TallyModel, { witness }: ReferenceQuantity): TallyWitness {
  if (witness !== "fuel") return witness;
  return model.witnesses.find((w) => w.startsWith("fuel")) ?? "fuel";
}

/** State of the engine in which a function is told; SI. */
export type FunctionState = {
  readonly speed: number;
  readonly pressure: number;
  readonly exhaustPressure: number;
  readonly air: number;
  readonly intakeTemperature: number;
  readonly effectivePulse: number;
};

/** In which constants are told: near warm idle, 1 ms of effective pulse, 100 kPa, so that an offset in kPa is a percentage. */
export const STANDARD_STATE: FunctionState = {
  speed: 15,
  pressure: 100e3,
  exhaustPressure: 100e3,
  air: 4e-3,
  intakeTemperature: 293.15,
  effectivePulse: 1e-3,
};
