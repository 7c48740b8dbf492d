/** The standard recording in a terminal. */
import type { CardPart, RecordingCard } from "../../job/recording-card.ts";
import { formatDuration, NARROW_SPACE } from "../words/number-words.ts";
import { wrapText } from "../words/wrap-text.ts";

const NARROWEST = 40;

export function renderRecordingCardText(card: RecordingCard, options: { readonly width: number }): string {
  const width = Math.max(NARROWEST, options.width);
  const list = (items: readonly string[]) => items.flatMap((item) => wrapText(`- ${item}`, width, "  "));
  const blocks = [
    [`${card.title.toUpperCase()}, ${formatDuration(card.seconds)} in all`, ...wrapText(card.lead, width)],
    ["Before", ...list(card.before)],
    ["Record", ...list(card.channels)],
    ...card.parts.map((part, k) => partLines(part, k + 1, width)),
    ["Cautions", ...list(card.cautions)],
  ];
  return `${blocks
    .map((lines) => lines.join("\n"))
    .join("\n\n")
    .replaceAll(NARROW_SPACE, " ")}\n`;
}

function partLines(part: CardPart, number: number, width: number): string[] {
  const open = `left out, it leaves open: ${part.leavesOpen.map(({ title }) => title).join("; ")}.`;
  const body = [...wrapText(part.do, width - INDENT.length), ...wrapText(open, width - INDENT.length, "  ")];
  return [`${number}. ${part.title}, ${formatDuration(part.seconds)}`, ...body.map((line) => `${INDENT}${line}`)];
}

const INDENT = "   ";
