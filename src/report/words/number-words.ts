/** Numbers as they are printed: two or three significant digits, a true minus sign, a narrow space before the per cent sign. */
export const MINUS = "\u2212";
export const NARROW_SPACE = "\u202f";

/** A number to so many significant digits, never more than its whole part needs: 3.456 -> 3.46, 1234.5 -> 1,230. */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? "\u221e" : value < 0 ? `${MINUS}\u221e` : "not a number";
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded);
  if (size >= 1e7 || size < 1e-4) return withTrueMinus(rounded.toExponential());
  return formatFixed(rounded, Math.max(0, digits - 1 - Math.floor(Math.log10(size))), true);
}

/** A value with its interval, all three to the same decimals: two digits of the half width below three of its decade, then one. */
export function formatInterval(value: number, low: number, high: number): { value: string; low: string; high: string } {
  const half = Math.abs(high - low) / 2;
  if (!(half > 0) || !Number.isFinite(half)) {
    return { value: formatNumber(value), low: formatNumber(low), high: formatNumber(high) };
  }
  const decade = Math.floor(Math.log10(half));
  const decimals = Math.min(6, Math.max(0, (half < 3 * 10 ** decade ? 1 : 0) - decade));
  const [v, l, h] = [value, low, high].map((x) => formatFixed(x, decimals, false)) as [string, string, string];
  const spare = Math.min(...[v, l, h].map(trailingZeros));
  const cut = (text: string) => (spare === 0 ? text : text.slice(0, -spare).replace(/\.$/, ""));
  return { value: cut(v), low: cut(l), high: cut(h) };
}

/** A fraction as a signed percentage: -0.131 -> "-13 %" (with a true minus sign), 0.004 -> "+0.4 %". */
export function formatPercent(fraction: number, signed = true): string {
  const percent = fraction * 100;
  const decimals = Math.abs(percent) >= 9.95 ? 0 : 1;
  const text = formatFixed(percent, decimals, true);
  return `${signed ? withSign(text) : text}${NARROW_SPACE}%`;
}

/** "+3", "-3", "0": the sign said also where it is plus. */
export function withSign(text: string): string {
  return text.startsWith(MINUS) || text === "0" ? text : `+${text}`;
}

/** A unit as it is printed: "mm2" -> "mm\u00b2"; "1" (no unit) -> "". */
export function formatUnit(unit: string): string {
  if (unit === "1") return "";
  if (unit === "deg") return "\u00b0 of the crank";
  return unit
    .replace(/\bdeg(?=[CF]\b)/, "\u00b0")
    .replace(/(?<=m)2\b/, "\u00b2")
    .replace(/(?<=m)3\b/, "\u00b3");
}

/** Number and unit, held together: "3.5 mm\u00b2". */
export function withUnit(text: string, unit: string): string {
  const printed = formatUnit(unit);
  return printed === "" ? text : `${text}${NARROW_SPACE}${printed}`;
}

/** Seconds as a length of time: "48 s", "12 min 5 s", "1 h 4 min". */
export function formatDuration(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 100) return `${seconds < 10 ? formatNumber(seconds, 2) : whole}${NARROW_SPACE}s`;
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60];
  if (hours > 0) return `${hours}${NARROW_SPACE}h ${minutes}${NARROW_SPACE}min`;
  return rest === 0 ? `${minutes}${NARROW_SPACE}min` : `${minutes}${NARROW_SPACE}min ${rest}${NARROW_SPACE}s`;
}

function formatFixed(value: number, decimals: number, trim: boolean): string {
  const text = value.toFixed(decimals);
  const [whole = "", fraction] = text.replace("-", "").split(".");
  const kept = trim ? fraction?.replace(/0+$/, "") : fraction;
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  const magnitude = kept === undefined || kept === "" ? grouped : `${grouped}.${kept}`;
  const isZero = /^[0.,]*$/.test(magnitude);
  return value < 0 && !isZero ? `${MINUS}${magnitude}` : magnitude;
}

function withTrueMinus(text: string): string {
  return text.replaceAll("-", MINUS).replace("e+", "e");
}

function trailingZeros(text: string): number {
  return text.includes(".") ? (/0*$/.exec(text)?.[0].length ?? 0) : 0;
}
