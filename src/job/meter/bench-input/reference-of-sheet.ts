/** The reference of a bench sheet as meters/bench takes it, in words, and the readings that its law has no flow for. */
import type { BenchRow, ReferenceDevice } from "../../../meters/index.ts";
import { type Failure, failure, parseQuantity, type Result, success } from "../../../quantities/index.ts";
import type { BenchSheetFile } from "./bench-sheet-schema.ts";

type Reference = BenchSheetFile["reference"];

export function deviceOf(reference: Reference, boreUncertainty: number): Result<ReferenceDevice, "reference-invalid"> {
  switch (reference.kind) {
    case "venturi": {
      const throatDiameter = metres(reference.throatDiameter);
      const inletDiameter = metres(reference.inletDiameter);
      if (throatDiameter * (1 + boreUncertainty) >= inletDiameter) return tooWide("throat", "inlet");
      return success({
        kind: "venturi",
        throatDiameter,
        inletDiameter,
        dischargeCoefficient: reference.dischargeCoefficient,
        dischargeUncertainty: ratio(reference.dischargeUncertainty),
      });
    }
    case "critical-nozzle":
      return success({
        kind: "critical-nozzle",
        throat: reference.throat,
        throatDiameter: metres(reference.throatDiameter),
      });
    case "master-meter":
      return success({ kind: "master-meter", relativeUncertainty: ratio(reference.uncertainty) });
    default: {
      const pipeDiameter = metres(reference.pipeDiameter);
      const boreDiameter = metres(reference.boreDiameter);
      if (boreDiameter * (1 + boreUncertainty) >= pipeDiameter) return tooWide("bore", "pipe");
      const taps = reference.kind === "orifice-plate" && reference.taps !== undefined ? { taps: reference.taps } : {};
      return success({
        kind: "differential-pressure",
        device: { kind: reference.kind, pipeDiameter, boreDiameter, ...taps },
      });
    }
  }
}

/** A drop that its own uncertainty reaches down to nothing, or up to the whole pressure, has no budget. */
export function deviceRowFault(
  device: ReferenceDevice,
  row: BenchRow,
  uncertainties: BenchSheetFile["uncertainties"],
): Failure<"reading-invalid"> | null {
  if (device.kind !== "differential-pressure" && device.kind !== "venturi") return null;
  const dropSd = pascals(uncertainties.pressureDrop);
  const pressureSd = pascals(uncertainties.pressure);
  if (row.pressureDrop <= dropSd) {
    return failure(
      "reading-invalid",
      "the pressure drop is not larger than its own uncertainty, so it tells no flow",
      "Leave the row out, or measure it with a smaller bore.",
    );
  }
  if (row.pressureDrop + dropSd >= row.pressure - pressureSd) {
    return failure(
      "reading-invalid",
      "the pressure drop is not below the pressure",
      "Check both: the pressure is absolute.",
    );
  }
  return null;
}

/** "orifice plate, 60 mm in a 100 mm pipe, corner taps" */
export function tellDevice(device: ReferenceDevice): string {
  const mm = (length: number) => `${Number((1000 * length).toPrecision(5))} mm`;
  const percent = (share: number) => `${Number((100 * share).toPrecision(3))} %`;
  switch (device.kind) {
    case "venturi":
      return `venturi, ${mm(device.throatDiameter)} in ${mm(device.inletDiameter)}, discharge ${device.dischargeCoefficient} ± ${percent(device.dischargeUncertainty)}`;
    case "critical-nozzle":
      return `critical nozzle, ${device.throat} throat of ${mm(device.throatDiameter)}`;
    case "master-meter":
      return `master meter, good to ${percent(device.relativeUncertainty)}`;
    default: {
      const { kind, pipeDiameter, boreDiameter, taps } = device.device;
      const names = {
        "orifice-plate": "orifice plate",
        "isa-1932-nozzle": "ISA 1932 nozzle",
        "long-radius-nozzle": "long-radius nozzle",
        "venturi-nozzle": "Venturi nozzle",
      };
      const tapped = kind === "orifice-plate" ? `, ${taps ?? "corner"} taps` : "";
      return `${names[kind]}, ${mm(boreDiameter)} in a ${mm(pipeDiameter)} pipe${tapped}`;
    }
  }
}

function tooWide(inner: string, outer: string): Failure<"reference-invalid"> {
  return failure(
    "reference-invalid",
    `The ${inner} of the reference is not smaller than its ${outer}.`,
    "Check both diameters.",
  );
}

const metres = (text: string): number => read(text, "length");
const ratio = (text: string): number => read(text, "ratio");
const pascals = (text: string | undefined): number => (text === undefined ? 0 : read(text, "pressure"));

function read(text: string, dimension: "length" | "ratio" | "pressure"): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`Assertion failed: the schema let through "${text}"`);
  return parsed.value;
}
