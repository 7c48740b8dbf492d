/** ln of a sum of exponentials, without overflow. */
export function logSum(values: readonly number[]): number {
  const largest = Math.max(...values);
  if (largest === -Infinity) return -Infinity;
  return largest + Math.log(values.reduce((sum, v) => sum + Math.exp(v - largest), 0));
}
