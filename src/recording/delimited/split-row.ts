/** One line of text into cells. Quotes hold delimiters; doubled quotes inside them stand for one. */
export type Delimiter = "," | ";" | "\t" | "|" | " ";

export type SplitRow = {
  readonly cells: string[] /** a quote was opened and not closed */;
  readonly unbalanced: boolean;
};

export function splitRow(line: string, delimiter: Delimiter): SplitRow {
  if (delimiter === " ") return splitAtSpaces(line);
  if (!line.includes('"')) return { cells: line.split(delimiter), unbalanced: false };
  const cells: string[] = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i]!;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (line[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && cell.trim() === "") {
      quoted = true;
      cell = "";
    } else if (c === delimiter) {
      cells.push(cell);
      cell = "";
    } else cell += c;
  }
  cells.push(cell);
  return { cells, unbalanced: quoted };
}

/** Runs of spaces and tabs part the cells; quotes and brackets hold words together ("Speed [rev / min]"). */
function splitAtSpaces(line: string): SplitRow {
  const cells: string[] = [];
  let unbalanced = false;
  // Brackets are bounded: a line of nothing but opening ones must not be searched to its end from each of them.
  const pattern = /"([^"]*)("?)|(?:[^\s"([]|\([^)]{0,40}\)|\[[^\]]{0,40}\]|[([])+/g;
  for (const match of line.matchAll(pattern)) {
    if (match[1] === undefined) cells.push(match[0]);
    else {
      cells.push(match[1]);
      if (match[2] === "") unbalanced = true;
    }
  }
  return { cells, unbalanced };
}
