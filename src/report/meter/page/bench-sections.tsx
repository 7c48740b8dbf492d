/** Sections of a flow-bench sheet: the flows, the points, what each uncertainty is made of. */

import type { BenchSheetResult, BenchSheetRow } from "../../../job/meter-result.ts";
import type { Section } from "../../sections/numbered-sections.tsx";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { SIGNAL_WORDS, tellBudget, tellCurveAir, tellSignal } from "../meter-words.ts";
import { CurveFigure, ShareBar } from "./curve-figure.tsx";
import { NumberTable } from "./number-table.tsx";

const SD_TO_90 = 1.6449;

export function benchSections(result: BenchSheetResult): readonly Section[] {
  return [
    { id: "flows", title: "Flow through the meter", body: <Flows result={result} /> },
    { id: "points", title: "Signal of the meter under test", body: <Picture result={result} /> },
    { id: "budget", title: "What the uncertainty is made of", body: <Budgets result={result} /> },
  ];
}

function Flows({ result }: { readonly result: BenchSheetResult }) {
  const { rows, signalUnit, air } = result;
  const hasDrop = rows.some((row) => row.pressureDrop_kPa !== null);
  return (
    <>
      <p className="lead">
        Reference: {result.reference}.{air !== null && ` Air at the meter under test: ${tellCurveAir(air)}.`}
      </p>
      <NumberTable
        name="Flows"
        head={[
          "row",
          SIGNAL_WORDS[signalUnit],
          "flow, g/s",
          "± at 95 %",
          "of flow",
          "pressure, kPa",
          "air, °C",
          ...(hasDrop ? ["drop, kPa"] : []),
        ]}
        rows={rows.map((row) => [
          String(row.row),
          formatNumber(row.signal, 4),
          formatNumber(row.flow_g_per_s, 4),
          formatNumber(row.expanded95_g_per_s, 2),
          formatPercent(row.expanded95_g_per_s / row.flow_g_per_s, false),
          formatNumber(row.pressure_kPa, 5),
          formatNumber(row.temperature_degC),
          ...(hasDrop ? [row.pressureDrop_kPa === null ? "" : formatNumber(row.pressureDrop_kPa)] : []),
        ])}
      />
      {rows.some((row) => row.outside.length > 0) && (
        <ul className="plain">
          {rows.flatMap((row) =>
            row.outside.map((broken) => (
              <li key={`${row.row} ${broken}`}>
                Row {row.row}: {broken}
              </li>
            )),
          )}
        </ul>
      )}
    </>
  );
}

function Picture({ result }: { readonly result: BenchSheetResult }) {
  const { rows, signalUnit } = result;
  return (
    <CurveFigure
      xName={SIGNAL_WORDS[signalUnit]}
      yName="flow, g/s"
      line={[]}
      marks={rows.map((row) => ({
        x: row.signal,
        y: row.flow_g_per_s,
        low: row.flow_g_per_s - SD_TO_90 * row.sd_g_per_s,
        high: row.flow_g_per_s + SD_TO_90 * row.sd_g_per_s,
        title: `row ${row.row}: ${tellSignal(row.signal, signalUnit)}, ${formatNumber(row.flow_g_per_s)} g/s`,
        open: row.outside.length > 0,
      }))}
      lineName=""
      markName={rows.some((row) => row.outside.length > 0) ? "rows; hollow: outside the standard" : "rows of the sheet"}
    />
  );
}

/** The smallest and the largest flow in full, where budgets differ most; the others in a line each. */
function Budgets({ result }: { readonly result: BenchSheetResult }) {
  const sorted = [...result.rows].sort((a, b) => a.flow_g_per_s - b.flow_g_per_s);
  const [smallest] = sorted;
  const largest = sorted.at(-1);
  const shown = [smallest, largest === smallest ? undefined : largest].filter((row) => row !== undefined);
  return (
    <>
      <div className="meter-tables">
        {shown.map((row) => (
          <Budget key={row.row} row={row} />
        ))}
      </div>
      {result.rows.length > shown.length && (
        <details className="more">
          <summary>The same for every row</summary>
          <NumberTable
            name="Budgets of all rows"
            head={["row", "flow, g/s", "sd, g/s", "made of"]}
            words={[3]}
            rows={result.rows.map((row) => [
              String(row.row),
              formatNumber(row.flow_g_per_s),
              formatNumber(row.sd_g_per_s, 2),
              tellBudget(row.budget, 8),
            ])}
          />
        </details>
      )}
    </>
  );
}

function Budget({ row }: { readonly row: BenchSheetRow }) {
  return (
    <NumberTable
      name={`Budget of row ${row.row}`}
      title={`Row ${row.row}, ${formatNumber(row.flow_g_per_s)} g/s`}
      head={["from", "sd, g/s", "share", "of the variance"]}
      words={[3]}
      rows={row.budget.map((line) => [
        line.name,
        formatNumber(line.sd_g_per_s, 2),
        formatPercent(line.share, false),
        <ShareBar key="bar" share={line.share} />,
      ])}
    />
  );
}
