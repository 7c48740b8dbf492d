/** Rows of cells as lines of text: columns as wide as their widest cell, numbers to the right, words to the left. */
const GAP = "  ";

export function textTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  options: { readonly indent?: string; readonly left?: readonly number[] } = {},
): string[] {
  const { indent = "  ", left = [0] } = options;
  const widths = head.map((title, j) => Math.max(title.length, ...rows.map((row) => (row[j] ?? "").length)));
  const line = (cells: readonly string[]) =>
    `${indent}${widths
      .map((width, j) => (left.includes(j) ? (cells[j] ?? "").padEnd(width) : (cells[j] ?? "").padStart(width)))
      .join(GAP)}`.trimEnd();
  return [line(head), ...rows.map(line)];
}
