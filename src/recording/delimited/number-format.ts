/**
 * How a column writes its numbers, told from a sample of its cells.
 * "1.234" alone can be 1.234 or 1234; any cell of the column, else of the file, that can be read in one way only decides.
 */
export type NumberFormat = {
  readonly decimal: "." | ",";
  /** the mark between groups of three digits, "" for none */
  readonly thousands: "" | "." | "," | "'" | " ";
  /** the unit glued to the numbers ("850 rpm"), "" for none */
  readonly glued: string;
};

export const PLAIN: NumberFormat = { decimal: ".", thousands: "", glued: "" };

const NUMBER = /^[+-]?(?:\d[\d.,' \u00a0\u202f]*|[.,]\d+)(?:[eE][+-]?\d+)?/;

export type FormatVotes = { point: number; comma: number; pointGroups: number; commaGroups: number };

/** What each cell says for itself: a mark used in a way only a decimal mark, or only a thousands mark, can be. */
export function votesOf(cells: readonly string[]): FormatVotes {
  const votes = { point: 0, comma: 0, pointGroups: 0, commaGroups: 0 };
  for (const cell of cells) {
    const number = NUMBER.exec(cell.trim())?.[0];
    if (number === undefined) continue;
    const points = number.split(".").length - 1;
    const commas = number.split(",").length - 1;
    if (points > 0 && commas > 0) {
      if (number.lastIndexOf(",") > number.lastIndexOf(".")) {
        votes.comma++;
        votes.pointGroups++;
      } else {
        votes.point++;
        votes.commaGroups++;
      }
    } else if (points > 1) votes.pointGroups++;
    else if (commas > 1) votes.commaGroups++;
    else if (points === 1 && !looksGrouped(number, ".")) votes.point++;
    else if (commas === 1 && !looksGrouped(number, ",")) votes.comma++;
  }
  return votes;
}

/** "1.234", "-12.500", not "0.123" and not "1234.500". */
function looksGrouped(number: string, mark: string): boolean {
  return new RegExp(`^[+-]?[1-9]\\d{0,2}\\${mark}\\d{3}$`).test(number.trim());
}

export function formatOf(cells: readonly string[], file: FormatVotes): NumberFormat {
  const own = votesOf(cells);
  const votes = own.comma + own.commaGroups + own.point + own.pointGroups > 0 ? own : file;
  const decimal = votes.comma + votes.pointGroups > votes.point + votes.commaGroups ? "," : ".";
  return { decimal, thousands: thousandsMark(cells, decimal), glued: gluedUnit(cells) };
}

function thousandsMark(cells: readonly string[], decimal: "." | ","): NumberFormat["thousands"] {
  const other = decimal === "." ? "," : ".";
  const numbers = cells.filter((cell) => NUMBER.test(cell.trim()));
  if (numbers.some((cell) => cell.includes(other))) return other;
  if (numbers.some((cell) => /\d'\d{3}/.test(cell))) return "'";
  if (numbers.some((cell) => /^[+-]?\d{1,3}([ \u00a0\u202f]\d{3})+(?!\d)/.test(cell.trim()))) return " ";
  return "";
}

/** The word after the number where most cells that hold a number carry the same one. */
function gluedUnit(cells: readonly string[]): string {
  const counts = new Map<string, number>();
  let numbers = 0;
  for (const cell of cells) {
    const text = cell.trim();
    const number = NUMBER.exec(text)?.[0];
    if (number === undefined) continue;
    numbers++;
    const rest = text.slice(number.trimEnd().length).trim();
    if (rest !== "" && /^[^\d,;]{1,14}\d?[^\d,;]{0,6}$/.test(rest) && !/^[:/.-]/.test(rest)) {
      counts.set(rest, (counts.get(rest) ?? 0) + 1);
    }
  }
  for (const [unit, count] of counts) if (count > 0.6 * numbers) return unit;
  return "";
}
