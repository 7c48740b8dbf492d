/**
 * A flow-bench sheet: from the pressures and temperatures at a reference device to the flow of each point with its budget.
 *
 * Equation    reference flow by the device's own law (gas/differential-pressure-device.ts, venturi.ts, critical-nozzle.ts) or a master
 *             meter, times 1 + leak; propagated over all inputs by the GUM, the law's own stated uncertainty included
 * Symbols     SI throughout; uncertainties are standard
 * Validity    limits of the device are named in `outside`, the value is given all the same
 * Assumes     moist air as the virial mixture; viscosity of dry air (moisture lowers it by less than 1 % up to w = 0.02)
 * Source      [gum2008] 5.1, [iso5167-1] section 8                            Check  flow-bench-sheet.test.ts, published/iso5167.test.ts
 */
import { propagateUncertainty, type UncertainInput, type UncertaintyBudget } from "../../numerics/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import type { BenchPoint } from "../curves/fit-candidates.ts";
import { type ReferenceDevice, type ReferenceReading, referenceFlow } from "./reference-device.ts";

/** Standard uncertainties of what is read at the bench; the device's own are added from its standard. */
export type BenchUncertainties = {
  readonly pressure: number;
  readonly temperature: number;
  readonly pressureDrop: number;
  readonly humidityRatio: number;
  /** relative, of the bore of the device */
  readonly boreRelative: number;
  /** relative to the flow: leaks between reference and meter under test */
  readonly leakRelative: number;
  /** of the signal of the meter under test */
  readonly signal: number;
};

export type BenchRow = ReferenceReading & {
  /** of the meter under test: V, Hz, s or 1 */
  readonly signal: number;
};

export type BenchResult = {
  readonly row: BenchRow;
  /** kg/s of moist air */
  readonly budget: UncertaintyBudget;
  readonly outside: readonly string[];
};

export type BenchSheet = {
  readonly results: readonly BenchResult[];
  /** ready for fitCurve */
  readonly points: readonly BenchPoint[];
};

export type BenchReason = "reading-invalid";

export function flowBenchSheet(
  device: ReferenceDevice,
  rows: readonly BenchRow[],
  uncertainties: BenchUncertainties,
): Result<BenchSheet, BenchReason> {
  const results: BenchResult[] = [];
  for (const [i, row] of rows.entries()) {
    const wrong = faultOf(device, row);
    if (wrong !== null) {
      return failure(
        "reading-invalid",
        `Row ${i + 1} of the bench sheet: ${wrong}.`,
        "Correct the reading or leave the row out.",
        {
          line: i + 1,
        },
      );
    }
    results.push(resultOf(device, row, uncertainties));
  }
  const points = results.map(({ row, budget }) => ({
    signal: row.signal,
    flow: budget.value,
    flowSd: budget.standardUncertainty,
    signalSd: uncertainties.signal,
  }));
  return success({ results, points });
}

function resultOf(device: ReferenceDevice, row: BenchRow, u: BenchUncertainties): BenchResult {
  const nominal = referenceFlow(device, row, 1);
  const inputs: UncertainInput[] = [
    { name: "pressure", value: row.pressure, standardUncertainty: u.pressure },
    { name: "temperature", value: row.temperature, standardUncertainty: u.temperature },
    { name: "pressure drop", value: row.pressureDrop, standardUncertainty: u.pressureDrop },
    { name: "humidity", value: row.humidityRatio, standardUncertainty: u.humidityRatio },
    { name: "bore", value: 1, standardUncertainty: u.boreRelative },
    { name: "leak", value: 1, standardUncertainty: u.leakRelative },
    ...nominal.ownUncertainty.map(({ name, relative }) => ({ name, value: 1, standardUncertainty: relative })),
  ];
  const budget = propagateUncertainty(
    ([pressure = 0, temperature = 0, pressureDrop = 0, humidity = 0, bore = 1, ...factors]) => {
      const moved = { ...row, pressure, temperature, pressureDrop, humidityRatio: Math.max(0, humidity) };
      return factors.reduce((flow, factor) => flow * factor, referenceFlow(device, moved, bore).massFlow);
    },
    inputs,
  );
  return { row, budget, outside: nominal.outside };
}

function faultOf(device: ReferenceDevice, row: BenchRow): string | null {
  if (!Object.values(row).every(Number.isFinite)) return "a value is no number";
  if (!(row.pressure > 0) || !(row.temperature > 200 && row.temperature < 400))
    return "pressure or temperature cannot be";
  if (device.kind === "master-meter" && row.masterFlow === undefined) return "the master meter's flow is missing";
  if (!(row.pressureDrop >= 0 && row.pressureDrop < row.pressure))
    return "the pressure drop is not between zero and the pressure";
  return row.humidityRatio >= 0 && row.humidityRatio < 1 ? null : "the humidity ratio is not between zero and one";
}
