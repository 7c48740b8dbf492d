/** A meter's curve in a terminal: drawing, rows, what its kind senses. */

import type { CurveSheet, MeterFactsSheet } from "../../../job/meter-result.ts";
import { formatNumber } from "../../words/number-words.ts";
import { textTable } from "../../words/text-table.ts";
import { wrapText } from "../../words/wrap-text.ts";
import {
  SIGNAL_WORDS,
  tellAir,
  tellCurveAir,
  tellInterval,
  tellMeter,
  tellParameter,
  tellSignal,
} from "../meter-words.ts";
import { drawingBlock } from "./drawing-block.ts";

export function curveBlocks(result: CurveSheet, width: number): string[][] {
  const { meter, rows, points, drawing, parameters } = result;
  const banded = rows.some((row) => row.low90_g_per_s !== null);
  const head = ["signal", "g/s", ...(banded ? ["90 %"] : []), "L/s", `g/s per ${unitOf(result)}`, "% per %"];
  const table = rows.map((row) => [
    tellSignal(row.signal, meter.signalUnit),
    formatNumber(row.massFlow_g_per_s),
    ...(banded ? [tellInterval(row.massFlow_g_per_s, row.low90_g_per_s, row.high90_g_per_s)] : []),
    formatNumber(row.volumeFlow_L_per_s),
    formatNumber(row.slope_g_per_s),
    row.sensitivity === null ? "" : formatNumber(row.sensitivity, 2),
  ]);
  return [
    [
      ...wrapText(`${meter.file}: ${tellMeter(meter)}, taken in ${tellCurveAir(meter.air)}.`, width),
      ...wrapText(`Told for air of ${tellAir(result.air)}.`, width),
      ...(parameters.length === 0
        ? []
        : wrapText(`Law in SI: ${parameters.map((p) => `${p.name} ${tellParameter(p.value)}`).join(", ")}.`, width)),
    ],
    drawingBlock(
      width,
      { x: SIGNAL_WORDS[meter.signalUnit], y: "air, g/s" },
      drawing.map((p) => ({ x: p.signal, y: p.massFlow_g_per_s })),
      points.map((p) => ({ x: p.signal, y: p.massFlow_g_per_s })),
    ),
    textTable(head, table),
    result.facts === null ? [] : factLines(result.facts, width),
  ];
}

export function factLines(facts: MeterFactsSheet, width: number): string[] {
  const line = (name: string, text: string) => wrapText(`${name}: ${text}.`, width, "  ");
  return [
    ...line("Senses", facts.senses),
    ...line("Blind to", facts.blindTo.join("; ")),
    ...line("Weather", facts.weather),
    ...line("Mounting", facts.orientation),
    ...line("Supply", facts.supply),
    ...line("Response", facts.response),
    ...line("Fails", facts.fails.join("; ")),
  ];
}

function unitOf({ meter }: CurveSheet): string {
  return meter.signalUnit === "ratio" ? "1" : meter.signalUnit;
}
