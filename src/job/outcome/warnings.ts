/** What the user must know beside the findings: the plain danger line, and remarks with codes. */
import { ownPrediction, type Weighed, type WeighedCause } from "../../findings/index.ts";
import { mayRecirculate, type Prepared, type TallyModel } from "../../tally/index.ts";
import type { ResultWarning } from "../result.ts";
import { scatterRemark, unexplainedRemark } from "./misfit-remarks.ts";
import { addWhich, LIKELY } from "./verdict.ts";
import { listed, median, percentNumber, placeOf } from "./words.ts";

/** Lean by more than this (ln) near full load endangers the engine. Common practice, no source. */
const LEAN = 0.05;

/** A likely fault that leans full load, or brings fuel that nobody commanded, puts a plain warning first. */
export function dangerLine(leading: readonly WeighedCause[], prepared: Prepared): string | null {
  const together = leading.reduce((sum, c) => sum + c.probability, 0);
  if (together < 0.5) return null;
  for (const cause of leading) {
    if (cause.cause.id === "fuel-unmetered") {
      return "Fuel may be reaching the engine uncommanded: check for leaking fuel and fuel in the oil before running it on. No full load until mended.";
    }
    if (leanAtFullLoad(cause, prepared)) {
      const which = leading.length === 1 && together >= LIKELY ? "This fault" : "A fault that is suspected here";
      return `${which} can make the engine lean at high load: no full load until it is mended and verified with a wide lambda probe.`;
    }
  }
  return null;
}

/** Near the largest flow the meter reads low where it doses, or less fuel is delivered than commanded. */
function leanAtFullLoad(cause: WeighedCause, { model }: Prepared): boolean {
  const { effect } = ownPrediction(cause, { model } as Prepared);
  const w = model.witnesses.length;
  const high = model.points.map((_, i) => i).filter((i) => model.physics.air[i]! > 0.7 * model.physics.largestFlow);
  const dosesByMeter = model.engine.metering === "meter" || model.engine.metering === "both";
  return model.witnesses.some((id, j) => {
    const shift = median(high.map((i) => effect[i * w + j]!));
    return (dosesByMeter && id.startsWith("meter") && shift < -LEAN) || (id.startsWith("fuel") && shift > LEAN);
  });
}

export function remarks(prepared: Prepared, weighed: Weighed): ResultWarning[] {
  const { model } = prepared;
  const out: ResultWarning[] = [];
  if (model.witnesses.length < 2)
    out.push({ code: "one-witness", text: `One witness alone cannot be contradicted. ${addWhich(model)}` });
  if (model.engine.metering === "unknown") {
    out.push({
      code: "metering-unknown",
      text: 'What the engine computer doses by is not known, so trims say nothing about the air: state "metering" in the engine file.',
    });
  }
  if (model.engine.metering === "meter" && !model.witnesses.some((w) => w.startsWith("meter"))) {
    out.push({
      code: "meter-not-recorded",
      text: "The engine doses by its air meter but the meter was not recorded: trims then bind nothing. Record the air mass flow.",
    });
  }
  if (model.bounds.length > 0) {
    out.push({
      code: "trim-at-limit",
      text: `Trims stood at their limit at ${model.bounds.length} operating point${model.bounds.length === 1 ? "" : "s"}: there they only bound the air.`,
    });
  }
  if (!model.points.some((p) => p.states.includes("full-load")) && !model.witnesses.some((w) => w.startsWith("fuel"))) {
    if (model.engine.ignition === "spark" && model.engine.metering !== "unknown") {
      out.push({
        code: "no-fuel-witness",
        text: "No trims or lambda could be used: add them, and a wide lambda for high load.",
      });
    }
  }
  const egr = recirculationRemark(model);
  if (egr !== null) out.push(egr);
  const strange = unexplainedRemark(prepared, weighed);
  if (strange !== null) out.push(strange);
  const scatter = scatterRemark(prepared, weighed);
  if (scatter !== null) out.push(scatter);
  return out;
}

/** Where fresh air falls well short of what the pressure suggests: recirculation, or a meter that reads low; told with its doubt. */
function recirculationRemark(model: TallyModel): ResultWarning | null {
  if (!mayRecirculate(model.engine) || !model.witnesses.includes("meter") || !model.witnesses.includes("pressure"))
    return null;
  const metered = model.physics.meter.meter;
  if (model.nonNegative.length === 0 || metered === undefined) return null;
  const share = (i: number) => 1 - metered[i]! / model.physics.pressureAir[i]!;
  const both = model.points.map((_, i) => i).filter((i) => !Number.isNaN(share(i)));
  const groups = (["idle", "fuel-cut"] as const)
    .map((state) => both.filter((i) => model.points[i]!.states.includes(state)))
    .concat([
      both.filter((i) => !model.points[i]!.states.includes("idle") && !model.points[i]!.states.includes("fuel-cut")),
    ])
    .filter((points) => points.length > 0 && median(points.map(share)) > 0.12);
  if (groups.length === 0) return null;
  const level =
    model.engine.volumetricEfficiency === null ? model.assumptions.breathingUnknown : model.assumptions.breathingStated;
  const parts = groups.map((points) => {
    const middle = median(points.map(share));
    const doubt = 1.645 * level * (1 - middle);
    const where = points.every(
      (i) => model.points[i]!.states.includes("idle") || model.points[i]!.states.includes("fuel-cut"),
    )
      ? placeOf(model, points)
      : "at part load";
    return `${percentNumber(100 * middle)} % (± ${percentNumber(100 * doubt)}) ${where}`;
  });
  return {
    code: "recirculation-inferred",
    text: `The fresh air metered is less than the manifold pressure suggests by ${listed(parts)}. On this engine that is what recirculated exhaust gas does; with the EGR valve's command not known to be shut, a meter that reads low looks the same and cannot be told from it. To separate them: record a full-load pull, or a short test with EGR blocked (state "egr": "none" for that recording), and the EGR command.`,
  };
}
