/** A small drawing in plain characters: a line of dots, points as "o", with the ends of both axes named. */
export type CharacterPlot = {
  readonly line: readonly { readonly x: number; readonly y: number }[];
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly width: number;
  readonly height: number;
  readonly xName: string;
  readonly yName: string;
  readonly format: (value: number) => string;
};

const LINE = ".";
const POINT = "o";
const FEWEST_COLUMNS = 10;

export function characterPlot(plot: CharacterPlot): string[] {
  const all = [...plot.line, ...plot.points];
  const [left, right] = ends(all.map((p) => p.x));
  const [bottom, top] = ends([0, ...all.map((p) => p.y)]);
  const labels = [plot.format(top), plot.format(bottom)];
  const margin = Math.max(...labels.map((label) => label.length));
  const columns = Math.max(FEWEST_COLUMNS, plot.width - margin - 2);
  const grid = Array.from({ length: plot.height }, () => new Array<string>(columns).fill(" "));
  const put = (x: number, y: number, mark: string) => {
    const column = Math.round(((x - left) / (right - left || 1)) * (columns - 1));
    const row = Math.round((1 - (y - bottom) / (top - bottom || 1)) * (plot.height - 1));
    const cells = grid[row];
    if (cells?.[column] !== undefined) cells[column] = mark;
  };
  // One dot a column: the line is read off between its points.
  for (let column = 0; column < columns; column++) {
    const x = left + ((right - left) * column) / (columns - 1);
    const y = valueAt(plot.line, x);
    if (y !== null) put(x, y, LINE);
  }
  for (const { x, y } of plot.points) put(x, y, POINT);
  const rows = grid.map((cells, row) => {
    const label = row === 0 ? labels[0] : row === plot.height - 1 ? labels[1] : "";
    return `${(label ?? "").padStart(margin)} |${cells.join("")}`.trimEnd();
  });
  const [from, to] = [plot.format(left), plot.format(right)];
  const name = plot.xName;
  const gap = columns - from.length - to.length - name.length;
  const below =
    gap < 2
      ? `${from} to ${to} ${name}`
      : `${from}${" ".repeat(Math.floor(gap / 2))}${name}${" ".repeat(Math.ceil(gap / 2))}${to}`;
  return [plot.yName, ...rows, `${" ".repeat(margin)} +${"-".repeat(columns)}`, `${" ".repeat(margin + 2)}${below}`];
}

function ends(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

/** Straight between the points of the line; null beyond them. */
function valueAt(line: CharacterPlot["line"], x: number): number | null {
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    if (x >= a.x && x <= b.x) return b.x === a.x ? a.y : a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
  }
  return null;
}
