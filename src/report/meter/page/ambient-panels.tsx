/** Altitude, heat and tilt as small pictures with one scale, so that they can be compared. */

import type { AmbientReading, AmbientRow, AmbientSheet } from "../../../job/meter-result.ts";
import { linearScale, linearTicks } from "../../charts/scale.ts";
import { type ChartAxis, type ChartLine, roundAxis, XyChart } from "../../charts/xy-chart.tsx";
import { formatNumber, formatPercent } from "../../words/number-words.ts";
import { readingColumns } from "../meter-words.ts";
import { LineKey } from "./curve-figure.tsx";

/** an axis never so fine that a rounding looks like an error */
const SMALLEST_RANGE = 0.05;

type Panel = {
  readonly title: string;
  readonly xName: string;
  readonly x: ChartAxis;
  readonly lines: readonly ChartLine[];
};

export function AmbientPanels({ result }: { readonly result: AmbientSheet }) {
  const panels = [altitudePanel(result), heatPanel(result), ...tiltPanel(result)];
  const values = panels.flatMap((panel) => panel.lines.flatMap((line) => line.points.flatMap((p) => p.y ?? [])));
  const y = roundAxis([-SMALLEST_RANGE, SMALLEST_RANGE, ...values], 6, (value) =>
    value === 0 ? "0" : formatPercent(value),
  );
  return (
    <figure>
      <div className="panels">
        {panels.map((panel) => (
          <div className="panel" key={panel.title}>
            <h3>{panel.title}</h3>
            <div className="panel-plot">
              <XyChart
                spoken={`${panel.title}: error of the reading against ${panel.xName}. The same numbers stand in a table below.`}
                x={panel.x}
                y={y}
                lines={panel.lines}
                notes={[
                  { x: 0.02, y: 0.93, text: "rich" },
                  { x: 0.02, y: 0.03, text: "lean" },
                ]}
              />
            </div>
            <p className="axis-name" aria-hidden="true">
              {panel.xName}
            </p>
            <ul className="panel-key">
              {panel.lines.map((line) => (
                <li key={line.name}>
                  <LineKey dash={line.dash} />
                  {line.name}
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
    </figure>
  );
}

function altitudePanel(result: AmbientSheet): Panel {
  return {
    title: "Altitude",
    xName: "height, m",
    x: axisOver(result.altitude.map((row) => row.altitude_m ?? 0)),
    lines: byCompensation(result, result.altitude, (row) => row.altitude_m ?? 0),
  };
}

function heatPanel(result: AmbientSheet): Panel {
  return {
    title: "Heat",
    xName: "air at the meter, °C",
    x: axisOver(result.heat.map((row) => row.temperature_degC)),
    lines: byCompensation(result, result.heat, (row) => row.temperature_degC),
  };
}

function tiltPanel({ tilt }: AmbientSheet): readonly Panel[] {
  const [first] = tilt;
  if (first === undefined) return [];
  const byAngle = first.tilt_deg !== null;
  const at = (row: (typeof tilt)[number]) => row.tilt_deg ?? 100 * row.torqueError;
  return [
    {
      title: "Tilt",
      xName: byAngle ? "tilt, degrees" : "closing torque added, % of the full spring",
      x: axisOver(tilt.map(at)),
      lines: first.readings.map((reading, j) => ({
        name: `flap ${formatPercent(reading.opening, false)} open`,
        dash: first.readings.length - 1 - j,
        points: tilt.map((row) => ({ x: at(row), y: errorOf(row.readings[j]) })),
      })),
    },
  ];
}

/** Whole for the one that corrects most. */
function byCompensation(
  result: AmbientSheet,
  rows: readonly AmbientRow[],
  at: (row: AmbientRow) => number,
): ChartLine[] {
  const names = readingColumns(result);
  return names.map((name, j) => ({
    name,
    dash: names.length - 1 - j,
    points: rows.map((row) => ({ x: at(row), y: errorOf(row.readings[j]) })),
  }));
}

function errorOf(reading: AmbientReading | undefined): number | null {
  const ratio = reading?.readingOverTruth ?? null;
  return ratio === null ? null : ratio - 1;
}

function axisOver(values: readonly number[]): ChartAxis {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { scale: linearScale(low, high), ticks: linearTicks(low, high, 4), format: (value) => formatNumber(value) };
}
