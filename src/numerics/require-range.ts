/**
 * Guards of the physics kernels against programmer errors. The name is a plain string and the text of the error is built
 * only when it is thrown, so a guard costs a comparison even in the innermost loop (NaN fails every guard).
 */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new Error(`Assertion failed: ${name} must be positive and finite, got ${value}`);
  }
}

export function requireWithin(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new Error(`Assertion failed: ${name} must lie between ${low} and ${high}, got ${value}`);
  }
}

export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new Error(`Assertion failed: ${name} must be a finite number, got ${value}`);
}
