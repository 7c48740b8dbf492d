/** Variants and geometries of the drawings: what the cases differ in beside tolerances and faults. */
import type { EngineDesign, MeterDesign } from "../../src/model-engine/index.ts";

/** The same engine with another number of cylinders, all flows, areas and volumes scaled with the displacement. */
export function ofGeometry(design: EngineDesign, cylinders: number, scale: number): EngineDesign {
  const { intake, exhaust, injectors } = design;
  return {
    ...design,
    note: `${design.note}, made over to ${cylinders} cylinders`,
    displacement: design.displacement * scale,
    cylinders,
    intake: {
      ...intake,
      chargeVolume: intake.chargeVolume * scale,
      manifoldVolume: intake.manifoldVolume * scale,
      throttleBore: intake.throttleBore * Math.sqrt(scale),
    },
    exhaust: { ...exhaust, volumeToProbe: exhaust.volumeToProbe * scale },
    egrValveArea: design.egrValveArea === null ? null : design.egrValveArea * scale,
    meter: design.meter === null ? null : ofSize(design.meter, scale),
    injectors: { ...injectors, flow: (injectors.flow * scale * design.cylinders) / cylinders },
    inertia: design.inertia * scale,
  };
}

function ofSize(meter: MeterDesign, scale: number): MeterDesign {
  const sized = { ...meter, bore: meter.bore * Math.sqrt(scale), largestFlow: meter.largestFlow * scale };
  if (sized.kind === "vane") return { ...sized, smallestFlow: sized.smallestFlow * scale };
  if (sized.kind === "vortex") {
    return { ...sized, smallestFlow: sized.smallestFlow * scale, pulsesPerVolume: sized.pulsesPerVolume / scale };
  }
  return sized;
}

export const VARIANTS: { readonly [name: string]: (design: EngineDesign) => EngineDesign } = {
  "as drawn": (design) => design,
  "wide probe": (design) => (design.lambdaProbe === "none" ? design : { ...design, lambdaProbe: "wide" }),
  "long manifold": (design) => ({
    ...design,
    note: `${design.note}, with a long manifold`,
    breathing: design.breathing.map(([speed, efficiency], i) => [speed, efficiency * (1.06 - 0.025 * i)] as const),
    residualStrength: design.residualStrength * 1.1,
    intake: { ...design.intake, manifoldVolume: design.intake.manifoldVolume * 1.7 },
  }),
};
