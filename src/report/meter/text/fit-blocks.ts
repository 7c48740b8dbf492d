/** A fitted curve in a terminal: drawing, laws, points. */

import type { FitLaw, FitSheet } from "../../../job/meter-result.ts";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { textTable } from "../../words/text-table.ts";
import { wrapText } from "../../words/wrap-text.ts";
import { SIGNAL_WORDS, tellCurveAir, tellDeviations, tellParameter, tellSignal } from "../meter-words.ts";
import { drawingBlock } from "./drawing-block.ts";

const MOST_LAWS = 5;

export function fitBlocks(result: FitSheet, width: number): string[][] {
  const { points, rows, laws, signalUnit, flowUnit } = result;
  const air = result.air === null ? "air not stated" : `air ${tellCurveAir(result.air)}`;
  return [
    wrapText(
      `${result.file}: ${points.length} points${result.from === "bench sheet" ? " of a bench sheet" : ""}, ${air}.`,
      width,
    ),
    drawingBlock(
      width,
      { x: SIGNAL_WORDS[signalUnit], y: `flow, ${flowUnit}` },
      rows.map((r) => ({ x: r.signal, y: r.flow })),
      points.map((p) => ({ x: p.signal, y: p.flow })),
    ),
    [
      ...textTable(
        ["law", "weight", "misfit", "expected"],
        laws
          .slice(0, MOST_LAWS)
          .map((law) => [
            law.name,
            formatPercent(law.weight, false),
            formatNumber(law.chiSquare),
            String(law.degreesOfFreedom),
          ]),
      ),
      ...(laws[0] === undefined ? [] : wrapText(`Taken: ${tellLaw(laws[0])} (SI).`, width, "  ")),
    ],
    textTable(
      ["point", "signal", flowUnit, "fitted", "off by", "in sd"],
      points.map((p, i) => [
        String(i + 1),
        tellSignal(p.signal, signalUnit),
        formatNumber(p.flow),
        formatNumber(p.fitted),
        p.flow === 0 ? "" : formatPercent(p.fitted / p.flow - 1),
        tellDeviations(p.residual),
      ]),
      { left: [] },
    ),
  ];
}

/** "King's law: still 0.81 ± 0.02, ..." */
export function tellLaw(law: FitLaw): string {
  const parameters = law.parameters.map(
    (p) => `${p.name} ${tellParameter(p.estimate)} ± ${formatNumber(p.standardError, 2)}`,
  );
  return `${law.name}, ${parameters.join(", ")}`;
}
