/** The figures as Markdown tables: what is printed and what docs/accuracy.md keeps. */
import { shareText } from "./binomial.ts";
import {
  brier,
  coverage,
  coverageOfSaid,
  falseAlarms,
  firstAnswers,
  groupAnswers,
  isRatio,
  median,
  power,
  quantile,
  reliability,
} from "./figures.ts";
import type { JudgedCase } from "./judge-case.ts";

export type Judged = {
  readonly title: string;
  readonly cases: readonly JudgedCase[];
  readonly oracle: readonly JudgedCase[];
};

const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
const row = (...cells: readonly string[]) => `| ${cells.join(" | ")} |`;
const head = (...cells: readonly string[]) => [row(...cells), row(...cells.map(() => "---"))];

export function wholeTable(parts: readonly Judged[]): string {
  const lines = head(
    "cases",
    "false alarms",
    "first answer",
    "group",
    "group, oracle",
    "group, on the oracle's cases",
    "Brier",
    "sizes in 90 % interval",
    "of findings said",
    "air, median and nine in ten",
    "air in 90 % interval",
    "air, oracle and on its cases",
  );
  for (const { title, cases, oracle } of parts) {
    const faulty = cases.filter((c) => c.faults.length > 0);
    const known = new Set(oracle.map((c) => c.number));
    const same = cases.filter((c) => known.has(c.number));
    const air = cases.map((c) => c.airError);
    lines.push(
      row(
        title,
        shareText(falseAlarms(cases)),
        shareText(firstAnswers(faulty)),
        shareText(groupAnswers(faulty)),
        shareText(groupAnswers(oracle.filter((c) => c.faults.length > 0))),
        shareText(groupAnswers(same.filter((c) => c.faults.length > 0))),
        brier(cases).toFixed(3),
        shareText(coverage(cases, null, 0)),
        shareText(coverageOfSaid(cases)),
        `${percent(median(air))}, ${percent(quantile(air, 0.9))}`,
        percent(cases.reduce((s, c) => s + c.airCovered, 0) / cases.length),
        `${percent(median(oracle.map((c) => c.airError)))}, ${percent(median(same.map((c) => c.airError)))}`,
      ),
    );
  }
  return lines.join("\n");
}

export function causeTable(cases: readonly JudgedCase[], oracle: readonly JudgedCase[]): string {
  const ids = [...new Set(cases.flatMap((c) => c.faults.map((f) => f.cause)))].sort();
  const lines = head("cause", "first answer", "group", "group, oracle", "sizes in 90 % interval", "found in 80 % from");
  for (const id of ids) {
    const alone = (c: JudgedCase) => c.faults.length === 1 && c.faults[0]!.cause === id;
    const size = power(cases, id);
    lines.push(
      row(
        id,
        shareText(firstAnswers(cases.filter(alone))),
        shareText(groupAnswers(cases.filter(alone))),
        shareText(groupAnswers(oracle.filter(alone))),
        shareText(coverage(cases, id, 0)),
        size === null ? "no size tried" : isRatio(id) ? percent(Math.expm1(size)) : String(Number(size.toPrecision(2))),
      ),
    );
  }
  return lines.join("\n");
}

export function reliabilityTable(cases: readonly JudgedCase[]): string {
  return [
    ...head("said between", "said, mean", "true"),
    ...reliability(cases).map((bin) => row(`${bin.low} and ${bin.high}`, percent(bin.said), shareText(bin.true))),
  ].join("\n");
}
