/** What is not known of a healthy fuel side: delivery, dead time, fuel, purge, probes. */
import type { OperatingPoint } from "../channels/index.ts";
import { referenceDoubt } from "./pulse-fuel.ts";
import { find } from "./readings.ts";
import type { TallyWitness } from "./tally-model.ts";
import { alongFlow, isFuelSide, single, type Unknown, type UnknownContext } from "./unknown-forms.ts";

/** of a purge valve whose command is not recorded: half open while driving in closed loop, as it usually is */
const PURGE_UNTOLD = 0.5;

export function fuelUnknowns(context: UnknownContext, witnesses: readonly TallyWitness[]): Unknown[] {
  const { engine, a, points, physics, fuelFrom } = context;
  const fuels = witnesses.filter(isFuelSide);
  const byPulse = (w: TallyWitness, i: number) => isFuelSide(w) && fuelFrom?.(i, w) === "pulse";
  const open = points.map((p) => purgeOpening(p, engine.purge));
  const list = [
    single("fuel delivery", (_, w) => (isFuelSide(w) ? a.fuelScale : 0)),
    single("injector dead time", (i, w) => {
      if (!isFuelSide(w)) return 0;
      return (byPulse(w, i) ? a.deadTimeStated : a.deadTime) / physics.effectivePulse[i]!;
    }),
    alongFlow(context, "fuel shape", a.fuelShape, 1, isFuelSide),
  ];
  if (open.some((share) => share > 0))
    list.push(single("purge", (i, w) => (isFuelSide(w) ? a.purge * (open[i] ?? 0) : 0)));
  // Each bank has injectors and a probe of its own: half of the spread is shared, half is not.
  const banks = fuels.filter((id) => id !== "exhaust");
  if (banks.length > 1)
    list.push(...banks.map((id) => single(`${id} delivery`, (_, w) => (w === id ? 0.5 * a.fuelScale : 0))));
  // With one probe its error is part of the delivery's; two can be held against each other.
  if (fuels.includes("exhaust"))
    list.push(
      single("control probe", (_, w) => (w !== "exhaust" && isFuelSide(w) ? a.controlProbe : 0)),
      single("independent probe", (_, w) => (w === "exhaust" ? a.independentProbe : 0)),
    );
  if (points.some((_, i) => fuels.some((w) => byPulse(w, i))))
    list.push(
      single("injector flow", (i, w) => (byPulse(w, i) ? a.injectorFlow : 0)),
      single("pressure regulator's reference", (i, w) => (byPulse(w, i) ? referenceDoubt(engine, i, physics) : 0)),
    );
  const alcohol = alcoholSd(context);
  if (alcohol > 0) list.push(single("alcohol of the fuel", (_, w) => (isFuelSide(w) ? alcohol : 0)));
  return list;
}

/** E85 is sold with 50 to 85 % of ethanol: this many times the spread of petrol. Common practice, no source. */
const E85_SPREAD = 4;

/** sd of ln(stoichiometric ratio) by the alcohol that nobody measured. */
function alcoholSd({ engine, a, points }: UnknownContext): number {
  if (points.some((p) => find(p, "alcoholShare", null) !== null)) return 0;
  if (engine.fuel === "e85") return E85_SPREAD * a.alcohol;
  return engine.fuel === "petrol" || engine.fuel === "e10" ? a.alcohol : 0;
}

/** 0 shut, 1 open: the sd of purge fuel is believed only while the valve may be open. */
function purgeOpening(point: OperatingPoint, fitted: "none" | "fitted" | null): number {
  const purge = find(point, "purge", null);
  if (purge !== null) return purge.mean > 0.02 ? Math.min(1, 0.3 + purge.mean) : 0;
  const driving = point.states.includes("closed-loop") && !point.states.includes("idle");
  return fitted === "fitted" && driving ? PURGE_UNTOLD : 0;
}
