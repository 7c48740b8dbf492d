/** The answer in a terminal, read in ten seconds: word, sentence, chances with sizes, what is ruled out, what next. */
import type { Finding, NextCheck, Outcome } from "../job/result.ts";
import { chanceWords } from "../quantities/index.ts";
import { leadingWords } from "./sections/before-after.tsx";
import { bitsWords } from "./words/bits-words.ts";
import { ANSWER_WORDS, CARD_WORDS } from "./words/card-words.ts";
import { causeTitle, countWord, lowerFirst, sentence } from "./words/cause-title.ts";
import { type FindingRow, groupFindings } from "./words/group-findings.ts";
import { leadWords } from "./words/lead-words.ts";
import { formatNumber, NARROW_SPACE } from "./words/number-words.ts";
import { pairWords } from "./words/pair-words.ts";
import { tellExclusion, tellSize } from "./words/size-words.ts";
import { typeset } from "./words/typeset.ts";
import { wrapText } from "./words/wrap-text.ts";

export type SummaryOptions = { readonly width: number; readonly colour: boolean };

const SHOWN_FROM = 0.01;
const PAIR_FROM = 0.05;
const MOST_ROWS = 6;
const MOST_MEMBERS = 3;
const MOST_EXCLUDED = 5;
const MOST_WARNINGS = 4;
const MOST_NEXT = 4;
const NARROWEST = 40;

export function renderSummaryText(outcome: Outcome, options: SummaryOptions): string {
  const width = Math.max(NARROWEST, options.width);
  const { result, view } = outcome;
  const bold = (text: string) => (options.colour ? `\u001b[1m${text}\u001b[22m` : text);
  const answer = ANSWER_WORDS[result.answer].toUpperCase();
  const blocks: string[][] = [];
  if (result.warning !== null) blocks.push(wrapText(`${CARD_WORDS.warning}: ${result.warning}`, width).map(bold));
  blocks.push([
    ...wrapText(`${answer}. ${view.headline}`, width).map(bold),
    ...wrapText([leadWords(outcome) ?? "", typeset(view.summary)].join(" ").trim(), width),
    ...wrapText(view.meansNot, width),
  ]);
  blocks.push(visitLines(outcome, width));
  blocks.push(chanceLines(outcome, width));
  blocks.push([
    ...excludedLines(outcome, width),
    ...notTestedLines(outcome, width),
    ...madeLines(outcome, width),
    ...nextLines(outcome, width),
  ]);
  blocks.push(warningLines(outcome, width));
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")
    .replaceAll(NARROW_SPACE, " ")}\n`;
}

/** What changed between the visits, and what each was. */
function visitLines({ view: { comparison } }: Outcome, width: number): string[] {
  if (comparison === undefined) return [];
  const told = comparison.visits.map(
    (visit) => `${visit.name}: ${ANSWER_WORDS[visit.answer]}, ${leadingWords(visit)}.`,
  );
  return [...wrapText(comparison.sentence, width), ...told.flatMap((line) => wrapText(line, width, "  "))];
}

function chanceLines(outcome: Outcome, width: number): string[] {
  const { result } = outcome;
  const healthy = result.healthyProbability;
  const rows = groupFindings(result)
    .filter((row) => row.probability >= SHOWN_FROM)
    .slice(0, MOST_ROWS);
  const pairs = outcome.view.ways.filter((way) => way.parts.length > 1 && way.probability >= PAIR_FROM).slice(0, 2);
  const told: [string, string][] = [
    ...rows.filter((row) => row.probability >= healthy).map((row) => rowWords(row, outcome)),
    ...pairs
      .filter((way) => way.probability >= healthy)
      .map((way): [string, string] => [chanceWords(way.probability), pairWords(way)]),
    [chanceWords(healthy), CARD_WORDS.healthy],
    ...rows.filter((row) => row.probability < healthy).map((row) => rowWords(row, outcome)),
    ...pairs
      .filter((way) => way.probability < healthy)
      .map((way): [string, string] => [chanceWords(way.probability), pairWords(way)]),
    [chanceWords(result.unexplainedProbability), CARD_WORDS.unexplained],
  ];
  const column = Math.max(...told.map(([chance]) => chance.length));
  const pad = " ".repeat(column + 4);
  return told.flatMap(([chance, text]) => {
    const [first = "", ...rest] = wrapText(text, width - pad.length);
    return [`  ${chance.padStart(column)}  ${first}`, ...rest.map((line) => `${pad}${line}`)];
  });
}

function rowWords(row: FindingRow, outcome: Outcome): [string, string] {
  if (row.kind === "single") return [chanceWords(row.probability), findingText(row.finding, outcome)];
  if (row.kind === "unseen") {
    const titles = row.members.map((f) => causeTitle(outcome.view, f.cause, f.bank));
    return [chanceWords(row.probability), `${CARD_WORDS.unseen} (${CARD_WORDS.unseenKeeps}): ${shortened(titles)}`];
  }
  const members = row.members.map((f) => findingText(f, outcome));
  const text = `One of ${countWord(row.members.length)} that this recording cannot tell apart: ${shortened(members)}`;
  return [chanceWords(row.probability), text];
}

/** What a terminal has no room for stands in the report. */
function shortened(parts: readonly string[], most = MOST_MEMBERS): string {
  const left = parts.length - most;
  // one more is told sooner than counted
  return left <= 1
    ? parts.join("; ")
    : `${parts.slice(0, most).join("; ")}; and ${countWord(left)} more, in the report`;
}

function findingText(finding: Finding, outcome: Outcome): string {
  const sizes = finding.sizes.map((size) => {
    const told = tellSize(finding.cause, size);
    return `${finding.sizes.length > 1 ? `${told.name} ` : ""}${told.value} (${told.interval})`;
  });
  return [causeTitle(outcome.view, finding.cause, finding.bank), ...sizes].join(", ");
}

function excludedLines({ result, view }: Outcome, width: number): string[] {
  const told = result.excluded
    .map((e) => tellExclusion(e, causeTitle(view, e.cause, null)))
    .filter((text) => text !== null);
  return told.length === 0 ? [] : wrapText(`Ruled out at 95 %: ${shortened(told, MOST_EXCLUDED)}.`, width, "  ");
}

function notTestedLines({ result, view }: Outcome, width: number): string[] {
  if (result.notVisited.length === 0) return [];
  const told = result.notVisited.map((n) =>
    n.leavesOpen.length === 0
      ? n.region
      : `${n.region} (leaves open: ${shortened(n.leavesOpen.map((c) => lowerFirst(causeTitle(view, c, null))))})`,
  );
  return wrapText(`Not tested: ${told.join("; ")}.`, width, "  ");
}

function madeLines({ view }: Outcome, width: number): string[] {
  return view.made.flatMap((m) => wrapText(`Found: ${m.title}: ${m.result}. ${m.says}`, width, "  "));
}

/** The first check in full, the rest by title. */
function nextLines({ result, view }: Outcome, width: number): string[] {
  const [first, ...rest] = result.nextChecks;
  if (first === undefined) return [];
  const minutes = (check: NextCheck) => `${formatNumber(check.minutes, 2)} min`;
  const next = `Next: ${sentence(first.text)} ${minutes(first)}, ${bitsWords(first.informationBits)}.`;
  const then = rest
    .slice(0, MOST_NEXT - 1)
    .map((check) => `${view.checks[check.check]?.title ?? check.check} (${minutes(check)})`);
  return [
    ...wrapText(next, width, "  "),
    ...(then.length === 0 ? [] : wrapText(`Then: ${then.join("; ")}.`, width, "  ")),
  ];
}

function warningLines({ result }: Outcome, width: number): string[] {
  // "One witness alone" is what the answer itself says.
  const warnings = result.warnings.filter((w) => w.code !== "one-witness");
  const told = warnings.slice(0, MOST_WARNINGS).flatMap((w) => wrapText(`- ${w.text}`, width, "  "));
  const left = warnings.length - MOST_WARNINGS;
  return left > 0 ? [...told, `- and ${left} more, in the report`] : told;
}
