/** What altitude, heat, humidity and tilt do, in a terminal: one short table each. */

import type { AmbientRow, AmbientSheet } from "../../../job/meter-result.ts";
import { formatNumber, formatPercent, withUnit } from "../../words/number-words.ts";
import { textTable } from "../../words/text-table.ts";
import { wrapText } from "../../words/wrap-text.ts";
import { KIND_WORDS, readingColumns, tellCurveAir, tellLambda, tellReading } from "../meter-words.ts";

export function ambientBlocks(result: AmbientSheet, width: number): string[][] {
  const { altitude, heat, humidity, tilt, facts } = result;
  const columns = readingColumns(result);
  const table = (title: string, rows: readonly AmbientRow[], labels: readonly string[]) =>
    textTable(
      [title, ...columns],
      rows.map((row, i) => [labels[i]!, ...row.readings.map(tellReading)]),
    );
  return [
    wrapText(
      `${result.file === null ? "A" : `${result.file}:`} ${KIND_WORDS[result.meterKind]}, right in ${tellCurveAir(result.curveAir)}. The tables tell the mass read against the true mass: + reads too much, so the engine runs rich until the closed loop corrects it.`,
      width,
    ),
    table(
      "altitude",
      altitude,
      altitude.map((row) => heightOf(row)),
    ),
    table(
      "air",
      heat,
      heat.map((row) => withUnit(formatNumber(row.temperature_degC), "degC")),
    ),
    textTable(
      ["humidity", "lambda that comes of it"],
      humidity.map((row) => [formatPercent(row.relativeHumidity, false), tellLambda(row.readings.at(-1))]),
    ),
    tilt.length === 0
      ? wrapText(`Mounting: ${facts.orientation}.`, width)
      : textTable(
          [
            tilt[0]?.tilt_deg === null ? "torque added" : "tilt",
            ...tilt[0]!.readings.map((r) => `flap ${formatPercent(r.opening, false)} open`),
          ],
          tilt.map((row) => [
            row.tilt_deg === null ? formatPercent(row.torqueError) : `${formatNumber(row.tilt_deg)}°`,
            ...row.readings.map(tellReading),
          ]),
        ),
  ];
}

function heightOf(row: AmbientRow): string {
  return row.altitude_m === null ? "" : withUnit(formatNumber(row.altitude_m, 4), "m");
}
