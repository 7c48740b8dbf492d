/** Sections of a conversion: the converted numbers, where they lie on the curve, what the uncertainty is made of. */

import type { ConvertedRow, MeterConversion } from "../../../job/meter-result.ts";
import type { ChartMark } from "../../charts/xy-chart.tsx";
import type { Section } from "../../sections/numbered-sections.tsx";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { kgPerHour, SIGNAL_WORDS, tellAir, tellInterval, tellSignal, tellValue, WHERE_WORDS } from "../meter-words.ts";
import { CurveFigure } from "./curve-figure.tsx";
import { NumberTable } from "./number-table.tsx";

export function convertSections(result: MeterConversion): readonly Section[] {
  const { signals, flows } = result;
  const told = signals.filter((row) => row.budget.length > 0);
  const numbers = (
    <>
      <p className="lead">Air at the meter: {tellAir(result.air)}.</p>
      {signals.length > 0 && <ConversionTable name="Signals to air" result={result} rows={signals} />}
      {flows.length > 0 && <ConversionTable name="Flows back to signals" result={result} rows={flows} />}
    </>
  );
  const sections: Section[] = [
    { id: "converted", title: "Converted", body: numbers },
    { id: "curve", title: "On the curve", body: <Picture result={result} /> },
  ];
  if (told.length > 0)
    sections.push({
      id: "budget",
      title: "What the uncertainty is made of",
      body: <Budgets result={result} rows={told} />,
    });
  return sections;
}

/** Shares of the variance, a column for each source that any of the signals feels. */
function Budgets({ result, rows }: { readonly result: MeterConversion; readonly rows: readonly ConvertedRow[] }) {
  const names = [...new Set(rows.flatMap((row) => row.budget.map((line) => line.name)))];
  return (
    <>
      <p className="lead">Shares of the variance.</p>
      <NumberTable
        name="Shares of the variance"
        head={["signal", "sd, g/s", ...names]}
        rows={rows.map((row) => [
          row.signal === null ? "none" : tellSignal(row.signal, result.meter.signalUnit),
          row.sd_g_per_s === null ? "" : formatNumber(row.sd_g_per_s, 2),
          ...names.map((name) => formatPercent(row.budget.find((line) => line.name === name)?.share ?? 0, false)),
        ])}
      />
    </>
  );
}

function ConversionTable({
  name,
  result,
  rows,
}: {
  readonly name: string;
  readonly result: MeterConversion;
  readonly rows: readonly ConvertedRow[];
}) {
  const banded = rows.some((row) => row.sd_g_per_s !== null);
  const remarks = rows.some((row) => row.where !== "inside");
  const head = [
    "signal",
    "air, g/s",
    ...(banded ? ["90 %"] : []),
    "kg/h",
    "volume, L/s",
    ...(remarks ? ["remark"] : []),
  ];
  return (
    <NumberTable
      name={name}
      head={head}
      words={remarks ? [head.length - 1] : []}
      rows={rows.map((row) => {
        const { massFlow_g_per_s: flow, low90_g_per_s: low, high90_g_per_s: high } = row;
        return [
          row.signal === null ? "none" : tellSignal(row.signal, result.meter.signalUnit),
          tellValue(flow, low, high),
          ...(banded ? [tellInterval(flow, low, high)] : []),
          flow === null ? "" : formatNumber(kgPerHour(flow)),
          row.volumeFlow_L_per_s === null ? "" : formatNumber(row.volumeFlow_L_per_s),
          ...(remarks ? [WHERE_WORDS[row.where]] : []),
        ];
      })}
    />
  );
}

function Picture({ result }: { readonly result: MeterConversion }) {
  const { meter, signals, flows, drawing } = result;
  const marks: ChartMark[] = [...signals, ...flows].flatMap((row, i) =>
    row.signal === null || row.massFlow_g_per_s === null
      ? []
      : [
          {
            x: row.signal,
            y: row.massFlow_g_per_s,
            low: row.low90_g_per_s,
            high: row.high90_g_per_s,
            title: `${i + 1}: ${tellSignal(row.signal, meter.signalUnit)}, ${formatNumber(row.massFlow_g_per_s)} g/s`,
            open: row.where !== "inside",
          },
        ],
  );
  return (
    <CurveFigure
      xName={SIGNAL_WORDS[meter.signalUnit]}
      yName="air, g/s"
      line={drawing.map((p) => ({
        x: p.signal,
        y: p.massFlow_g_per_s,
        low: p.low90_g_per_s,
        high: p.high90_g_per_s,
      }))}
      marks={marks}
      lineName="curve in this air"
      markName={marks.some((m) => m.open) ? "converted; hollow: beyond the curve" : "converted"}
    />
  );
}
