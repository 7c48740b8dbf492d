/** Sections of a fit: the curve over its points, how far each point is off, the laws that were tried. */

import type { FitSheet } from "../../../job/meter-result.ts";
import { roundAxis, tightAxis, XyChart } from "../../charts/xy-chart.tsx";
import type { Section } from "../../sections/numbered-sections.tsx";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { SIGNAL_WORDS, tellCurveAir, tellDeviations, tellParameter, tellSignal } from "../meter-words.ts";
import { CurveFigure } from "./curve-figure.tsx";
import { EngineFileSnippet } from "./engine-file-snippet.tsx";
import { NumberTable } from "./number-table.tsx";

const SD_TO_90 = 1.6449;
/** residuals beyond so many standard deviations are set in italics */
const APART = 3;

export function fitSections(result: FitSheet): readonly Section[] {
  return [
    { id: "curve", title: "Curve", body: <Picture result={result} /> },
    { id: "residuals", title: "How far each point is off", body: <Residuals result={result} /> },
    { id: "laws", title: "Laws tried", body: <Laws result={result} /> },
  ];
}

function Picture({ result }: { readonly result: FitSheet }) {
  const { rows, points, signalUnit, flowUnit, air } = result;
  return (
    <>
      <p className="lead">
        {air === null ? "The air at the meter is not stated." : `Air at the meter: ${tellCurveAir(air)}.`}
      </p>
      <CurveFigure
        xName={SIGNAL_WORDS[signalUnit]}
        yName={`flow, ${flowUnit}`}
        line={rows.map((r) => ({ x: r.signal, y: r.flow, low: r.low90, high: r.high90 }))}
        marks={points.map((p, i) => ({
          x: p.signal,
          y: p.flow,
          low: p.flow - SD_TO_90 * p.sd,
          high: p.flow + SD_TO_90 * p.sd,
          title: `point ${i + 1}: ${tellSignal(p.signal, signalUnit)}, ${formatNumber(p.flow)} ${flowUnit}`,
          open: false,
        }))}
        lineName={result.laws[0]?.name ?? "curve"}
        markName="bench points"
      />
      {result.engineFileCurve !== null && <EngineFileSnippet curve={result.engineFileCurve} />}
    </>
  );
}

function Residuals({ result }: { readonly result: FitSheet }) {
  const { points, signalUnit, flowUnit } = result;
  const largest = Math.max(2, ...points.map((p) => Math.abs(p.residual)));
  return (
    <>
      <p className="lead">
        Curve minus point, in standard deviations of the point. They should lie about nought without a bow, two in three
        within one.
      </p>
      <figure className="tally">
        <div className="tally-plot small-plot">
          <XyChart
            spoken="Residual of each point against the signal. The same numbers stand in the table below."
            x={tightAxis(
              points.map((p) => p.signal),
              8,
              (value) => formatNumber(value),
            )}
            yName="residual, standard deviations"
            y={roundAxis([-largest, largest], 4, (value) => formatNumber(value))}
            marks={points.map((p, i) => ({
              x: p.signal,
              y: p.residual,
              low: null,
              high: null,
              title: `point ${i + 1}: ${formatNumber(p.residual, 2)}`,
              open: Math.abs(p.residual) > APART,
            }))}
          />
        </div>
        <p className="axis-name" aria-hidden="true">
          {SIGNAL_WORDS[signalUnit]}
        </p>
      </figure>
      <NumberTable
        name="The points"
        head={["point", SIGNAL_WORDS[signalUnit], `flow, ${flowUnit}`, "sd", "curve", "off by", "in sd"]}
        rows={points.map((p, i) => [
          String(i + 1),
          formatNumber(p.signal, 4),
          formatNumber(p.flow),
          formatNumber(p.sd, 2),
          formatNumber(p.fitted),
          p.flow === 0 ? "" : formatPercent(p.fitted / p.flow - 1),
          Math.abs(p.residual) > APART ? <em key="apart">{tellDeviations(p.residual)}</em> : tellDeviations(p.residual),
        ])}
      />
    </>
  );
}

function Laws({ result }: { readonly result: FitSheet }) {
  const { laws, rejected } = result;
  const [taken] = laws;
  return (
    <>
      <p className="lead">
        The law is chosen by evidence: what it leaves unexplained, against how many numbers it needs.
        {result.birgeRatio > 1 && ` The points scatter ${formatNumber(result.birgeRatio, 2)} times as much as stated.`}
      </p>
      <NumberTable
        name="Laws that fit"
        head={["law", "weight", "misfit", "misfit expected"]}
        rows={laws.map((law, k) => [
          k === 0 ? <strong key="taken">{law.name}</strong> : law.name,
          formatPercent(law.weight, false),
          formatNumber(law.chiSquare),
          String(law.degreesOfFreedom),
        ])}
      />
      {taken !== undefined && (
        <dl className="facts">
          {taken.parameters.map((p) => (
            <div key={p.name}>
              <dt>{p.name} (SI)</dt>
              <dd className="fact-value">
                {tellParameter(p.estimate)} ± {formatNumber(p.standardError, 2)}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {rejected.length > 0 && (
        <ul className="plain">
          {rejected.map((r) => (
            <li key={r.name}>
              {r.name}: {r.reason}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
