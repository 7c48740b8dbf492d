/** Signals as people write them ("2.5 V", "480 Hz", "25 %") and in the unit their curve is read in. */
import type { SignalUnit } from "../../engine/index.ts";
import { failure, findUnit, type Result, success, toSi, unit, unitsOf } from "../../quantities/index.ts";

const DIMENSION = { V: "voltage", Hz: "frequency", ms: "time", ratio: "ratio" } as const;
const EXAMPLE = { V: "2.5 V", Hz: "480 Hz", ms: "1.2 ms", ratio: "25 %" } as const;
const UNITS = ["V", "Hz", "ms", "ratio"] as const;
const NUMBER_AND_UNIT = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\S.*?)?\s*$/;

export { shownSignal, tellSignal } from "../../meters/index.ts";

/** Whether a meter can give this signal: no frequency runs backwards, no wiper stands beyond its track. */
export function signalCanBe(signalUnit: SignalUnit, signal: number): boolean {
  if (signalUnit === "ratio") return signal >= 0 && signal <= 1;
  return Number.isFinite(signal) && (signalUnit === "V" || signal >= 0);
}

/** SI value of a signal. A bare number is in the curve's own unit. */
export function readSignal(text: string, signalUnit: SignalUnit): Result<number, "signal-invalid"> {
  const read = readAnySignal(text, signalUnit);
  if (!read.ok) return read;
  if (read.value.signalUnit === signalUnit) return success(read.value.signal);
  return failure(
    "signal-invalid",
    `"${text}" is not a signal of this meter, which is read in ${nameOf(signalUnit)}.`,
    `Write for example "${EXAMPLE[signalUnit]}".`,
  );
}

/** SI value and unit of a signal; a bare number takes `bare`, and is refused where that is null. */
export function readAnySignal(
  text: string,
  bare: SignalUnit | null,
): Result<{ readonly signal: number; readonly signalUnit: SignalUnit }, "signal-invalid"> {
  const [, number, symbol] = NUMBER_AND_UNIT.exec(text) ?? [];
  if (number === undefined) return notASignal(text, bare);
  if (symbol === undefined) {
    if (bare === null) return notASignal(text, bare);
    return success({ signal: toSi(Number(number), unit(bare === "ratio" ? "1" : bare)), signalUnit: bare });
  }
  const found = unitOf(symbol, bare);
  if (found === null) return notASignal(text, bare);
  return success({ signal: toSi(Number(number), found.unit), signalUnit: found.signalUnit });
}

/** "1/s" and the like are spelled alike in several dimensions, so the dimension expected decides first. */
function unitOf(symbol: string, expected: SignalUnit | null) {
  const found = findUnit(symbol);
  if (found === undefined) return null;
  for (const signalUnit of expected === null ? UNITS : [expected, ...UNITS]) {
    const match = unitsOf(DIMENSION[signalUnit]).find((u) => u === found);
    if (match !== undefined) return { unit: match, signalUnit };
  }
  return null;
}

function notASignal(text: string, expected: SignalUnit | null) {
  const example = expected === null ? '"2.5 V", "480 Hz", "1.2 ms" or "25 %"' : `"${EXAMPLE[expected]}"`;
  return failure("signal-invalid", `"${text}" is not a signal.`, `Write for example ${example}.`);
}

export function nameOf(signalUnit: SignalUnit): string {
  return signalUnit === "ratio" ? "parts of its reference" : signalUnit;
}
