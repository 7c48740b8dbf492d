/** Flow against signal: the curve with its 90 % band, and points with their bars. */
import { percentOf } from "../../charts/scale.ts";
import { type ChartMark, roundAxis, tightAxis, XyChart } from "../../charts/xy-chart.tsx";
import { formatNumber, NARROW_SPACE } from "../../words/number-words.ts";

export type CurveFigureProps = {
  readonly xName: string;
  readonly yName: string;
  readonly line: readonly {
    readonly x: number;
    readonly y: number;
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly marks: readonly ChartMark[];
  /** what the line and the marks are, for the key */
  readonly lineName: string;
  readonly markName: string;
};

export function CurveFigure({ xName, yName, line, marks, lineName, markName }: CurveFigureProps) {
  const banded = line.filter((p) => p.low !== null && p.high !== null);
  const values = [
    0,
    ...line.flatMap((p) => [p.y, p.low ?? p.y, p.high ?? p.y]),
    ...marks.flatMap((m) => [m.y, m.low ?? m.y, m.high ?? m.y]),
  ];
  const signals = [...line.map((p) => p.x), ...marks.map((m) => m.x)];
  const hasBars = marks.some((m) => m.low !== null);
  return (
    <figure className="tally">
      <div className="tally-plot">
        <XyChart
          spoken={`${yName} against ${xName}: ${[lineName, markName].filter((name) => name !== "").join(" and ")}. The same numbers stand in a table below.`}
          x={tightAxis(signals, 8, (value) => formatNumber(value))}
          y={roundAxis(values, 6, (value) => formatNumber(value))}
          bands={
            banded.length === 0
              ? []
              : [
                  {
                    name: "band",
                    x: banded.map((p) => p.x),
                    low: banded.map((p) => p.low ?? p.y),
                    high: banded.map((p) => p.high ?? p.y),
                  },
                ]
          }
          lines={line.length === 0 ? [] : [{ name: lineName, dash: 0, points: line }]}
          marks={marks}
          yName={yName}
        />
      </div>
      <p className="axis-name" aria-hidden="true">
        {xName}
      </p>
      <figcaption className="legend">
        <ul>
          {line.length > 0 && (
            <li>
              <LineKey dash={0} banded={banded.length > 0} />
              {lineName}
            </li>
          )}
          {marks.length > 0 && (
            <li>
              <MarkKey />
              {markName}
            </li>
          )}
        </ul>
        {(banded.length > 0 || hasBars) && (
          <p>
            {banded.length > 0 && hasBars ? "band and bars" : banded.length > 0 ? "band" : "bars"}: 90{NARROW_SPACE}%
          </p>
        )}
      </figcaption>
    </figure>
  );
}

export function LineKey({ dash, banded = false }: { readonly dash: number; readonly banded?: boolean }) {
  return (
    <svg className="key" width="22" height="14" viewBox="0 0 22 14" aria-hidden="true">
      {banded && <path className="band-area chart-band" d="M0 1H22V13H0Z" />}
      <path className={`chart-line dash-${dash}`} d="M0 7H22" />
    </svg>
  );
}

function MarkKey() {
  return (
    <svg className="key" width="22" height="14" viewBox="0 0 22 14" aria-hidden="true">
      <path className="mark mark-filled" d="M7.5 7a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0Z" />
    </svg>
  );
}

/** A bar for a share of the whole, beside its number. */
export function ShareBar({ share }: { readonly share: number }) {
  return (
    <span className="share-track" aria-hidden="true">
      <span className="share-bar" style={{ width: percentOf(Math.min(1, Math.max(0, share))) }} />
    </span>
  );
}
