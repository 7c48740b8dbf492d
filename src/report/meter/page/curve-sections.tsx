/** Sections of a meter's curve: the picture, its rows, what this kind of meter senses. */

import type { CurveSheet } from "../../../job/meter-result.ts";
import type { Section } from "../../sections/numbered-sections.tsx";
import { formatNumber } from "../../words/number-words.ts";
import { SIGNAL_WORDS, tellAir, tellCurveAir, tellInterval, tellParameter, tellSignal } from "../meter-words.ts";
import { CurveFigure } from "./curve-figure.tsx";
import { EngineFileSnippet } from "./engine-file-snippet.tsx";
import { Facts } from "./facts.tsx";
import { NumberTable } from "./number-table.tsx";

export function curveSections(result: CurveSheet): readonly Section[] {
  const sections: Section[] = [
    { id: "curve", title: "Curve", body: <Picture result={result} /> },
    { id: "rows", title: "In numbers", body: <Rows result={result} /> },
  ];
  if (result.facts !== null)
    sections.push({ id: "facts", title: "This kind of meter", body: <Facts facts={result.facts} /> });
  return sections;
}

function Picture({ result }: { readonly result: CurveSheet }) {
  const { meter, drawing, points, parameters } = result;
  return (
    <>
      <p className="lead">
        Taken in air of {tellCurveAir(meter.air)}; drawn for air of {tellAir(result.air)}.
      </p>
      <CurveFigure
        xName={SIGNAL_WORDS[meter.signalUnit]}
        yName="air, g/s"
        line={drawing.map((p) => ({
          x: p.signal,
          y: p.massFlow_g_per_s,
          low: p.low90_g_per_s,
          high: p.high90_g_per_s,
        }))}
        marks={points.map((p) => ({
          x: p.signal,
          y: p.massFlow_g_per_s,
          low: p.low90_g_per_s,
          high: p.high90_g_per_s,
          title: `${tellSignal(p.signal, meter.signalUnit)}, ${formatNumber(p.massFlow_g_per_s)} g/s`,
          open: false,
        }))}
        lineName={meter.law === "points" ? "curve through its points" : meter.law}
        markName="points of the curve"
      />
      {parameters.length > 0 && (
        <dl className="facts">
          {parameters.map((p) => (
            <div key={p.name}>
              <dt>{p.name} (SI)</dt>
              <dd className="fact-value">{tellParameter(p.value)}</dd>
            </div>
          ))}
        </dl>
      )}
      <EngineFileSnippet curve={result.engineFileCurve} />
    </>
  );
}

function Rows({ result }: { readonly result: CurveSheet }) {
  const { meter, rows } = result;
  const banded = rows.some((row) => row.low90_g_per_s !== null);
  const perUnit = meter.signalUnit === "ratio" ? "1" : meter.signalUnit;
  return (
    <NumberTable
      name="The curve in numbers"
      head={[
        SIGNAL_WORDS[meter.signalUnit],
        "air, g/s",
        ...(banded ? ["90 %"] : []),
        "volume, L/s",
        `g/s for 1 ${perUnit}`.replace("1 1", "1"),
        "% of flow for 1 % of signal",
      ]}
      rows={rows.map((row) => [
        formatNumber(row.signal, 4),
        formatNumber(row.massFlow_g_per_s),
        ...(banded ? [tellInterval(row.massFlow_g_per_s, row.low90_g_per_s, row.high90_g_per_s)] : []),
        formatNumber(row.volumeFlow_L_per_s),
        formatNumber(row.slope_g_per_s),
        row.sensitivity === null ? "" : formatNumber(row.sensitivity, 2),
      ])}
    />
  );
}
