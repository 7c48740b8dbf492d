/** Scales of the figures: value -> share of the width or height (0 to 1), and the ticks a reader expects on them. */
export type Scale = (value: number) => number;

export function linearScale(low: number, high: number): Scale {
  const span = high - low;
  return (value) => (span === 0 ? 0.5 : (value - low) / span);
}

/** Equal ratios, equal lengths. `low` must be above zero. */
export function logScale(low: number, high: number): Scale {
  const inner = linearScale(Math.log(low), Math.log(high));
  return (value) => inner(Math.log(value));
}

/** 1-2-5 ticks of a logarithmic axis within its ends; only 1 and 5 or only 1 where it spans more. */
export function logTicks(low: number, high: number): number[] {
  const decades = Math.log10(high / low);
  const mantissas = decades < 2.2 ? [1, 2, 5] : decades < 4 ? [1, 5] : [1];
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
    for (const mantissa of mantissas) {
      const tick = Number((mantissa * 10 ** power).toPrecision(1));
      if (tick >= low * 0.999 && tick <= high * 1.001) ticks.push(tick);
    }
  }
  return ticks;
}

/** Round steps between two ends, at most `count` of them. */
export function linearTicks(low: number, high: number, count: number): number[] {
  const span = high - low;
  if (!(span > 0)) return [low];
  const power = 10 ** Math.floor(Math.log10(span / count));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => span / s <= count) ?? 10 * power;
  const ticks: number[] = [];
  for (let k = Math.ceil(low / step - 1e-9); k * step <= high + step * 1e-9; k++) {
    ticks.push(Number((k * step).toPrecision(12)));
  }
  return ticks;
}

const TIME_STEPS = [
  0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 43_200, 86_400,
];

/** Steps of a clock, in s, from nought: at most `count` of them. */
export function timeTicks(duration: number, count: number): number[] {
  const step = TIME_STEPS.find((s) => duration / s <= count) ?? duration;
  const ticks: number[] = [];
  for (let k = 0; k * step <= duration * (1 + 1e-9); k++) ticks.push(Number((k * step).toPrecision(12)));
  return ticks;
}

/** A share of the width as SVG writes it, so that a figure fills its column without a script: 0.25 -> "25%". */
export function percentOf(share: number): string {
  return `${Number((share * 100).toFixed(2))}%`;
}
