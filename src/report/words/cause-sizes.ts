/**
 * How the size of each cause is told. Ids and the meaning of sizes are fixed; this says in which words they are read.
 *
 *   amount     something there is some of (a hole, a loss): only "larger than"
 *   reduction  a relative change that is negative or nothing: only "by more than"
 *   signed     reading minus truth, in its unit
 *   relative   reading over truth minus one, told in per cent
 *   ratio      reading over truth, told as its distance from one in per cent
 *   share      a part of a whole, told in per cent
 *   remainder  the part of a whole that is left: only "less than"
 */
export type SizeForm = "amount" | "reduction" | "signed" | "relative" | "ratio" | "share" | "remainder";

export type CauseSize = {
  readonly form: SizeForm;
  /** "manifold pressure reading", continued by "more than 2 kPa low" */
  readonly noun: string;
  readonly below: string;
  readonly above: string;
  /** "at 70 % of the largest flow", where it is told; "" where it needs no place */
  readonly where: string;
};

const size = (form: SizeForm, noun: string, below = "low", above = "high", where = ""): CauseSize => ({
  form,
  noun,
  below,
  above,
  where,
});

const CAUSE_SIZES: { readonly [cause: string]: CauseSize } = {
  "meter-fouled": size("reduction", "meter reading low", "", "", "at 70 % of the largest flow"),
  "meter-scaled": size("ratio", "meter reading"),
  "meter-offset": size("signed", "meter signal", "low", "high", "at idle"),
  "meter-curve-wrong": size("relative", "meter curve", "low", "high", "at 70 % of the largest flow"),
  "vane-tilted": size("relative", "torque on the vane", "low", "high", "of the full spring torque"),
  "meter-pulsation": size("relative", "meter reading in pulsating flow", "low", "high", "at its worst"),
  "intake-restricted": size(
    "amount",
    "filter and duct losing",
    "less",
    "more",
    "beyond a sound one's at the largest flow",
  ),
  "leak-before-throttle": size("amount", "hole between meter and throttle", "smaller", "larger"),
  "boost-leak": size("amount", "hole in the charge pipe", "smaller", "larger"),
  "manifold-leak": size("amount", "hole after the throttle", "smaller", "larger"),
  "throttle-area-changed": size("signed", "idle opening of the throttle", "too small", "too large"),
  "map-biased": size("signed", "manifold pressure reading"),
  "map-scaled": size("relative", "manifold pressure scale"),
  "intake-temperature-biased": size("signed", "intake temperature reading"),
  "baro-biased": size("signed", "barometer reading"),
  "egr-stuck-open": size("amount", "EGR opening", "smaller", "larger", "where it should be shut"),
  "egr-low-flow": size("remainder", "EGR flow", "less", "more", "of what is expected"),
  "breathing-reduced": size("reduction", "breathing reduced", "", "", "at the largest flow"),
  "valve-timing-shifted": size("signed", "valve timing", "early", "late"),
  misfire: size("share", "misfires", "less", "more", "of the firings"),
  "fuel-delivery-scaled": size("ratio", "fuel delivery"),
  "fuel-supply-limited": size("share", "fuel supply falling", "less", "more", "at the largest flow"),
  "fuel-pressure-reference": size("amount", "fuel pressure too high by", "less", "more", "at idle"),
  "fuel-unmetered": size("amount", "fuel nobody commanded", "less", "more"),
  "fuel-composition": size("ratio", "air-fuel ratio of the fuel"),
  "injector-offset": size("signed", "injector dead time", "too short", "too long"),
  "exhaust-air-added": size("amount", "air added in the exhaust", "less", "more", "at idle"),
  "lambda-biased": size("signed", "probe reading"),
};

/** The words of a cause; one that is not in the table is told by its title and its bare numbers. */
export function causeSize(cause: string, title: string): CauseSize {
  return CAUSE_SIZES[cause] ?? size("signed", title);
}
