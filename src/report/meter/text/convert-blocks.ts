/** Converted signals and flows in a terminal. */

import type { ConvertedRow, MeterConversion } from "../../../job/meter-result.ts";
import { formatNumber } from "../../words/number-words.ts";
import { textTable } from "../../words/text-table.ts";
import { wrapText } from "../../words/wrap-text.ts";
import {
  kgPerHour,
  SIGNAL_WORDS,
  tellAir,
  tellBudget,
  tellInterval,
  tellMeter,
  tellSignal,
  tellValue,
  WHERE_WORDS,
} from "../meter-words.ts";
import { drawingBlock } from "./drawing-block.ts";

export function convertBlocks(result: MeterConversion, width: number): string[][] {
  const { meter, signals, flows, drawing } = result;
  const marks = [...signals, ...flows].flatMap((row) =>
    row.signal === null || row.massFlow_g_per_s === null ? [] : [{ x: row.signal, y: row.massFlow_g_per_s }],
  );
  return [
    [
      ...wrapText(`${meter.file}: ${tellMeter(meter)}.`, width),
      ...wrapText(`Air at the meter: ${tellAir(result.air)}.`, width),
    ],
    signals.length === 0 ? [] : conversionTable(result, signals),
    flows.length === 0 ? [] : conversionTable(result, flows),
    signals.flatMap((row) =>
      row.budget.length === 0 || row.signal === null
        ? []
        : wrapText(
            `${tellSignal(row.signal, meter.signalUnit)} is uncertain by: ${tellBudget(row.budget)}`,
            width,
            "  ",
          ),
    ),
    drawingBlock(
      width,
      { x: SIGNAL_WORDS[meter.signalUnit], y: "air, g/s" },
      drawing.map((p) => ({ x: p.signal, y: p.massFlow_g_per_s })),
      marks,
    ),
  ];
}

function conversionTable({ meter }: MeterConversion, rows: readonly ConvertedRow[]): string[] {
  const hasInterval = rows.some((row) => row.sd_g_per_s !== null);
  const head = ["signal", "g/s", ...(hasInterval ? ["90 %"] : []), "kg/h", "L/s", ""];
  const cells = rows.map((row) => {
    const { massFlow_g_per_s: flow, low90_g_per_s: low, high90_g_per_s: high } = row;
    return [
      row.signal === null ? "none" : tellSignal(row.signal, meter.signalUnit),
      tellValue(flow, low, high),
      ...(hasInterval ? [tellInterval(flow, low, high)] : []),
      flow === null ? "" : formatNumber(kgPerHour(flow)),
      row.volumeFlow_L_per_s === null ? "" : formatNumber(row.volumeFlow_L_per_s),
      WHERE_WORDS[row.where],
    ];
  });
  return textTable(head, cells, { left: [0, head.length - 1] });
}
