/**
 * What a unit text means: a unit of the table, with what the trade writes around it: "psig", "bar abs", "mg/stroke",
 * "AFR". Factors not in the table are exact or say their source.
 */
import { findUnit, type Unit } from "../../quantities/index.ts";

export type UnitMeaning = {
  readonly unit: Unit;
  /** what a pressure counts from, where the text says it ("psig", "bar(a)", "inHg vacuum") */
  readonly reference: "absolute" | "gauge" | "vacuum" | null;
  /** a mixture given as mass ratio or as its inverse; a trim given as a factor around 1 or 100 % */
  readonly form: "plain" | "air-fuel-ratio" | "equivalence" | "factor" | "percent-factor";
};

const ratio = (symbol: string, factor: number): Unit => ({ symbol, dimension: "ratio", si: "1", factor, before: 0 });
const extra = (symbol: string, dimension: Unit["dimension"], si: string, factor: number): Unit => ({
  symbol,
  dimension,
  si,
  factor,
  before: 0,
});

const EXTRA: Readonly<Record<string, Unit>> = {
  closedflag: ratio("1", 1),
  openflag: ratio("1", 1),
  onoff: ratio("1", 1),
  "on/off": ratio("1", 1),
  bool: ratio("1", 1),
  flag: ratio("1", 1),
  state: ratio("1", 1),
  count: ratio("1", 1),
  counts: ratio("1", 1),
  unitless: ratio("1", 1),
  none: ratio("1", 1),
  "°vot": extra("deg", "angle", "rad", Math.PI / 180),
  "°kwvot": extra("deg", "angle", "rad", Math.PI / 180),
  "°kwv.ot": extra("deg", "angle", "rad", Math.PI / 180),
  "°crk": extra("deg", "angle", "rad", Math.PI / 180),
  "°crank": extra("deg", "angle", "rad", Math.PI / 180),
  "°avpmh": extra("deg", "angle", "rad", Math.PI / 180),
  "°apms": extra("deg", "angle", "rad", Math.PI / 180),
  kmh: extra("km/h", "speed", "m/s", 1 / 3.6),
  lbft: extra("lbf ft", "torque", "N m", 1.355818),
  "lb-ft": extra("lbf ft", "torque", "N m", 1.355818),
  "ft-lb": extra("lbf ft", "torque", "N m", 1.355818),
  "gal/h": extra("gal/h", "volumeFlow", "m3/s", 3.785412e-3 / 3600), // US gallon, NIST SP 811 App. B
  gph: extra("gal/h", "volumeFlow", "m3/s", 3.785412e-3 / 3600),
  "g/stroke": extra("g/stroke", "mass", "kg", 1e-3),
  "g/cyl": extra("g/stroke", "mass", "kg", 1e-3),
  "mg/cyl": extra("mg/stroke", "mass", "kg", 1e-6),
  "mg/hub": extra("mg/stroke", "mass", "kg", 1e-6),
  "mg/hb": extra("mg/stroke", "mass", "kg", 1e-6),
  "mg/cp": extra("mg/stroke", "mass", "kg", 1e-6),
  "mg/coup": extra("mg/stroke", "mass", "kg", 1e-6),
  "mg/takt": extra("mg/stroke", "mass", "kg", 1e-6),
  "m³/h": extra("m3/h", "volumeFlow", "m3/s", 1 / 3600),
};

const FORMS: Readonly<Record<string, UnitMeaning>> = {
  afr: { unit: ratio("AFR", 1), reference: null, form: "air-fuel-ratio" },
  ":1": { unit: ratio("AFR", 1), reference: null, form: "air-fuel-ratio" },
  phi: { unit: ratio("phi", 1), reference: null, form: "equivalence" },
  φ: { unit: ratio("phi", 1), reference: null, form: "equivalence" },
  factor: { unit: ratio("factor", 1), reference: null, form: "factor" },
  "%factor": { unit: ratio("% factor", 0.01), reference: null, form: "percent-factor" },
};

const QUALIFIER =
  /^(.*?)[\s_(]*(abs|absolute|absolut|absolu|absoluto|gauge|gage|relative|relativ|relatif|rel|vacuum|a|g|ü)\.?\)?$/i;

export function unitMeaning(text: string): UnitMeaning | null {
  const key = text.toLowerCase().replace(/\s+/g, "");
  const form = FORMS[key];
  if (form !== undefined) return form;
  const unit = EXTRA[key] ?? findUnit(text);
  const qualified = QUALIFIER.exec(text.trim());
  const bare = qualified?.[1] === undefined || qualified[1] === "" ? undefined : findUnit(qualified[1]);
  // "psia" and "kPaa" are in the table as psi and kPa: the qualifier still says which.
  if (bare?.dimension === "pressure" && (unit === undefined || unit.symbol === bare.symbol)) {
    return { unit: bare, reference: referenceOf(qualified![2]!.toLowerCase()), form: "plain" };
  }
  return unit === undefined ? null : { unit, reference: null, form: "plain" };
}

function referenceOf(word: string): UnitMeaning["reference"] {
  if (word === "vacuum") return "vacuum";
  return word.startsWith("a") ? "absolute" : "gauge";
}
