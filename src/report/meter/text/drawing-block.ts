/** The curve of a meter in plain characters. */
import { characterPlot } from "../../charts/character-plot.ts";
import { formatNumber } from "../../words/number-words.ts";

type Point = { readonly x: number; readonly y: number };

const WIDEST = 76;
const HEIGHT = 12;

export function drawingBlock(
  width: number,
  names: { readonly x: string; readonly y: string },
  line: readonly Point[],
  points: readonly Point[],
): string[] {
  return characterPlot({
    line,
    points,
    width: Math.min(width, WIDEST),
    height: HEIGHT,
    xName: names.x,
    yName: names.y,
    format: (value) => formatNumber(value),
  });
}
