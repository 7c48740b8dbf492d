/**
 * The truth beside a recording, as delimited text: what really flowed, pressed and was injected, in the units of the trade.
 * One row each `every` steps of the trace.
 */
import { assert, findUnit, fromSi } from "../quantities/index.ts";
import type { Trace, TraceColumn } from "./trace.ts";

/** Column of the trace, unit shown ("" is a plain number), digits. */
const SHOWN: readonly (readonly [column: TraceColumn, unit: string, digits: number])[] = [
  ["time", "s", 2],
  ["speed", "rpm", 1],
  ["manifoldPressure", "kPa", 3],
  ["pressureBeforeThrottle", "kPa", 3],
  ["exhaustPressure", "kPa", 3],
  ["chargeTemperature", "degC", 2],
  ["meterFlow", "g/s", 4],
  ["throttleFlow", "g/s", 4],
  ["leakBeforeThrottleFlow", "g/s", 4],
  ["boostLeakFlow", "g/s", 4],
  ["leakFlow", "g/s", 4],
  ["purgeFlow", "g/s", 4],
  ["egrFlow", "g/s", 4],
  ["airIntoCylinders", "g/s", 4],
  ["storage", "g/s", 4],
  ["fuelFlow", "g/s", 5],
  ["lambda", "", 4],
];

export function truthText(truth: Trace, every: number): string {
  const columns = SHOWN.map(([column, unit, digits]) => {
    const conversion = unit === "" ? null : findUnit(unit);
    assert(conversion !== undefined, `no unit ${unit} for ${column}`);
    const shown = (si: number) => (conversion === null ? si : fromSi(si, conversion)).toFixed(digits);
    return { values: truth[column], shown };
  });
  const lines = [SHOWN.map(([column, unit]) => (unit === "" ? column : `${column} [${unit}]`)).join(",")];
  for (let row = 0; row < truth.rows; row += every) {
    lines.push(columns.map(({ values, shown }) => shown(values[row]!)).join(","));
  }
  return `${lines.join("\n")}\n`;
}
