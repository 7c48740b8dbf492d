/** Variants and geometries of the drawings: what the cases differ in beside tolerances and faults. */
import type { EngineDesign, MeterDesign } from "../../src/model-engine/index.ts";

/** The same engine with another number of cylinders, all flows, areas and volumes scaled with the displacement. */
export function ofGeometry(
  design: EngineDesign,
  made: { readonly cylinders: number; readonly banks: 1 | 2; readonly scale: number },
): EngineDesign {
  const { cylinders, banks, scale } = made;
  const { intake, exhaust, injectors } = design;
  return {
    ...design,
    note: `${design.note}, made over to ${cylinders} cylinders${banks === 2 ? " in two banks" : ""}`,
    displacement: design.displacement * scale,
    cylinders,
    banks,
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
  // 5 mm2 a litre: about a tenth of the charge at light cruise
  "recirculation by position": (design) =>
    design.ignition === "compression"
      ? design
      : {
          ...design,
          note: `${design.note}, with a recirculation valve set by position`,
          egrValveArea: 5e-6 * design.displacement * 1e3,
        },
  "fuel held against ambient": (design) =>
    design.ignition === "compression" || design.injection === "direct"
      ? design
      : {
          ...design,
          note: `${design.note}, with a fuel pressure held against ambient`,
          injectors: { ...design.injectors, pressureReference: "ambient" },
        },
  "long manifold": (design) => ({
    ...design,
    note: `${design.note}, with a long manifold`,
    breathing: design.breathing.map(([speed, efficiency], i) => [speed, efficiency * (1.06 - 0.025 * i)] as const),
    residualStrength: design.residualStrength * 1.1,
    intake: { ...design.intake, manifoldVolume: design.intake.manifoldVolume * 1.7 },
  }),
};
