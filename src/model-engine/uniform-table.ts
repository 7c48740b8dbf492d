/**
 * Functions of one and two variables tabulated once on uniform grids, for the time loop: a look-up costs a few additions.
 * Outside the grid the edge value holds.
 */
export type Axis = { readonly low: number; readonly high: number; readonly cells: number };
export type Table1 = { readonly axis: Axis; readonly values: Float64Array };
export type Table2 = { readonly x: Axis; readonly y: Axis; readonly values: Float64Array };

export function tabulate(axis: Axis, f: (x: number) => number): Table1 {
  return { axis, values: Float64Array.from({ length: axis.cells + 1 }, (_, i) => f(node(axis, i))) };
}

export function tabulate2(x: Axis, y: Axis, f: (x: number, y: number) => number): Table2 {
  const values = new Float64Array((x.cells + 1) * (y.cells + 1));
  for (let i = 0; i <= x.cells; i++) {
    for (let j = 0; j <= y.cells; j++) values[i * (y.cells + 1) + j] = f(node(x, i), node(y, j));
  }
  return { x, y, values };
}

/** Linear between the nodes. */
export function lookUp(table: Table1, x: number): number {
  const at = position(table.axis, x);
  const i = Math.min(Math.floor(at), table.axis.cells - 1);
  const low = table.values[i]!;
  return low + (at - i) * (table.values[i + 1]! - low);
}

/** Bilinear between the nodes. */
export function lookUp2(table: Table2, x: number, y: number): number {
  const atX = position(table.x, x);
  const atY = position(table.y, y);
  const i = Math.min(Math.floor(atX), table.x.cells - 1);
  const j = Math.min(Math.floor(atY), table.y.cells - 1);
  const u = atX - i;
  const v = atY - j;
  const row = table.y.cells + 1;
  const k = i * row + j;
  const values = table.values;
  return (
    (1 - u) * ((1 - v) * values[k]! + v * values[k + 1]!) + u * ((1 - v) * values[k + row]! + v * values[k + row + 1]!)
  );
}

function node(axis: Axis, i: number): number {
  return axis.low + ((axis.high - axis.low) * i) / axis.cells;
}

function position(axis: Axis, x: number): number {
  return Math.min(Math.max(((x - axis.low) / (axis.high - axis.low)) * axis.cells, 0), axis.cells);
}
