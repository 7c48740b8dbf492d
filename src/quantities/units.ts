/**
 * Units at the edge: one table (units.json), two conversions. Inside everything is SI.
 *
 *   toSi(x, unit)   = (x + before) * factor
 *   fromSi(y, unit) = y / factor - before
 *
 * `before` is non-zero for degC and degF alone. Source: SI Brochure and NIST SP 811 App. B for the factors.
 */
import table from "./units.json" with { type: "json" };

export type Dimension =
  | "pressure"
  | "temperature"
  | "massFlow"
  | "volumeFlow"
  | "frequency"
  | "time"
  | "voltage"
  | "current"
  | "resistance"
  | "speed"
  | "angle"
  | "ratio"
  | "length"
  | "volume"
  | "area"
  | "mass"
  | "torque"
  | "power";

export type Unit = {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly si: string;
  readonly factor: number;
  readonly before: number;
};

const bySpelling = new Map<string, Unit>();
const bySymbol = new Map<string, Unit>();
for (const row of table.units) {
  const unit: Unit = {
    symbol: row.symbol,
    dimension: row.dimension as Dimension,
    si: row.si,
    factor: row.factor,
    before: "before" in row && row.before !== undefined ? row.before : 0,
  };
  bySymbol.set(unit.symbol, unit);
  for (const spelling of [row.symbol, ...row.spellings]) {
    const key = normalise(spelling);
    if (!bySpelling.has(key)) bySpelling.set(key, unit);
  }
}

/** The unit a text names, or undefined. Case and spaces do not matter ("KPA", "rev / min"). */
export function findUnit(text: string): Unit | undefined {
  return bySymbol.get(text.trim()) ?? bySpelling.get(normalise(text));
}

/** A unit by its own symbol; the symbol must be in the table (programmer error otherwise). */
export function unit(symbol: string): Unit {
  const found = bySymbol.get(symbol);
  if (found === undefined) throw new Error(`Assertion failed: no unit ${symbol} in units.json`);
  return found;
}

export function toSi(value: number, u: Unit): number {
  return (value + u.before) * u.factor;
}

export function fromSi(value: number, u: Unit): number {
  return value / u.factor - u.before;
}

/** Every unit of one dimension, in the table's order. */
export function unitsOf(dimension: Dimension): Unit[] {
  return [...bySymbol.values()].filter((u) => u.dimension === dimension);
}

function normalise(text: string): string {
  return text.normalize("NFC").replace(/\s+/g, "").toLowerCase();
}
