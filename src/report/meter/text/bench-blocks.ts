/** A worked flow-bench sheet in a terminal. */

import type { BenchSheetResult } from "../../../job/meter-result.ts";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { textTable } from "../../words/text-table.ts";
import { wrapText } from "../../words/wrap-text.ts";
import { SIGNAL_WORDS, tellBudget, tellCurveAir, tellSignal } from "../meter-words.ts";
import { drawingBlock } from "./drawing-block.ts";

export function benchBlocks(result: BenchSheetResult, width: number): string[][] {
  const { rows, signalUnit } = result;
  const air = result.air === null ? "" : ` Air at the meter under test: ${tellCurveAir(result.air)}.`;
  const points = rows.map((row) => ({ x: row.signal, y: row.flow_g_per_s }));
  return [
    wrapText(`${result.file}: ${result.reference}.${air}`, width),
    textTable(
      ["row", "signal", "g/s", "± (95 %)", "share", "most of it"],
      rows.map((row) => [
        String(row.row),
        tellSignal(row.signal, signalUnit),
        formatNumber(row.flow_g_per_s, 4),
        formatNumber(row.expanded95_g_per_s, 2),
        formatPercent(row.expanded95_g_per_s / row.flow_g_per_s, false),
        `${tellBudget(row.budget, 2)}${row.outside.length === 0 ? "" : " (outside the standard)"}`,
      ]),
      { left: [5] },
    ),
    points.length < 2 ? [] : drawingBlock(width, { x: SIGNAL_WORDS[signalUnit], y: "flow, g/s" }, [], points),
    rows.flatMap((row) =>
      row.outside.length === 0 ? [] : wrapText(`Row ${row.row}: ${row.outside.join("; ")}.`, width, "  "),
    ),
  ];
}
