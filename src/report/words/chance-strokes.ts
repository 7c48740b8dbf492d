/** How many of ten strokes are drawn for it. */
export function chanceStrokes(probability: number): number {
  return Math.min(10, Math.max(0, Math.round(probability * 10)));
}
