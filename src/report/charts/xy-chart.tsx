/**
 * A plain chart of lines, bands and points over two axes, that fills its box without a script. Lines are told apart by their
 * dashes, points by their shape, so that it reads in black and white.
 */
import { bandPath, linePath, type Place, STRETCHED } from "./path.ts";
import { linearScale, linearTicks, percentOf, type Scale } from "./scale.ts";

export type ChartAxis = {
  /** value to share of the axis, 0 to 1 from left or bottom */
  readonly scale: Scale;
  readonly ticks: readonly number[];
  readonly format: (value: number) => string;
};

export type XY = { readonly x: number; readonly y: number | null };

export type ChartLine = {
  readonly name: string;
  /** 0 whole, 1 dashed, 2 dotted, 3 dash and dot */
  readonly dash: number;
  readonly points: readonly XY[];
};

export type ChartBand = {
  readonly name: string;
  readonly x: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
};

export type ChartMark = {
  readonly x: number;
  readonly y: number;
  /** ends of its bar, if it has one */
  readonly low: number | null;
  readonly high: number | null;
  /** read out and shown on hovering */
  readonly title: string;
  readonly open: boolean;
};

/** Words inside the plot, by share of width and height from the bottom left. */
export type ChartNote = { readonly x: number; readonly y: number; readonly text: string };

export type XyChartProps = {
  /** what a reader who cannot see it hears */
  readonly spoken: string;
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  /** stands above the axis */
  readonly yName?: string;
  readonly bands?: readonly ChartBand[];
  readonly lines?: readonly ChartLine[];
  readonly marks?: readonly ChartMark[];
  readonly notes?: readonly ChartNote[];
};

export function XyChart({ spoken, x, y, yName, bands = [], lines = [], marks = [], notes = [] }: XyChartProps) {
  const place = (px: number, py: number | null): Place =>
    py === null || !Number.isFinite(py) ? null : { x: x.scale(px), y: 1 - y.scale(py) };
  return (
    <svg className="tally-picture" width="100%" height="100%" role="img" aria-label={spoken}>
      <ChartAxes x={x} y={y} />
      {yName !== undefined && (
        <text className="y-name" y="-10">
          {yName}
        </text>
      )}
      <svg {...STRETCHED} width="100%" height="100%" aria-hidden="true" className="chart-stretched">
        {bands.map((band) => (
          <path
            key={band.name}
            className="band-area chart-band"
            d={bandPath(
              band.x.map((px, k) => place(px, band.high[k] ?? null)),
              band.x.map((px, k) => place(px, band.low[k] ?? null)),
            )}
          />
        ))}
        {lines.map((line) => (
          <path
            key={line.name}
            className={`chart-line dash-${line.dash}`}
            d={linePath(line.points.map((p) => place(p.x, p.y)))}
          />
        ))}
      </svg>
      {notes.map((note) => (
        <text key={note.text} className="chart-note" x={percentOf(note.x)} y={percentOf(1 - note.y)}>
          {note.text}
        </text>
      ))}
      {marks.map((mark) => (
        <Mark key={mark.title} mark={mark} x={x} y={y} />
      ))}
    </svg>
  );
}

function ChartAxes({ x, y }: { readonly x: ChartAxis; readonly y: ChartAxis }) {
  return (
    <g className="axis">
      {y.ticks.map((tick) => {
        const at = percentOf(1 - y.scale(tick));
        return (
          <g key={tick}>
            <line x1="0" x2="100%" y1={at} y2={at} className={tick === 0 ? "grid grid-nought" : "grid"} />
            <text x="-8" y={at} dy="0.35em" textAnchor="end">
              {y.format(tick)}
            </text>
          </g>
        );
      })}
      {x.ticks.map((tick) => (
        <svg key={tick} x={percentOf(x.scale(tick))} y="100%" className="unclipped" aria-hidden="true">
          <line y1="0" y2="5" className="tick" />
          <text y="18" textAnchor="middle">
            {x.format(tick)}
          </text>
        </svg>
      ))}
    </g>
  );
}

function Mark({ mark, x, y }: { readonly mark: ChartMark; readonly x: ChartAxis; readonly y: ChartAxis }) {
  const at = y.scale(mark.y);
  const end = (value: number | null) => percentOf(at - y.scale(value ?? mark.y));
  return (
    <svg x={percentOf(x.scale(mark.x))} y={percentOf(1 - at)} className="unclipped">
      <title>{mark.title}</title>
      {mark.low !== null && mark.high !== null && <line className="bar" y1={end(mark.low)} y2={end(mark.high)} />}
      <path className={`mark ${mark.open ? "mark-open" : "mark-filled"}`} d={DISC} />
    </svg>
  );
}

const DISC = "M-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0Z";

/** A linear axis that reaches from the lowest to the highest value, both ends on round numbers. */
export function roundAxis(values: readonly number[], count: number, format: (value: number) => string): ChartAxis {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const inner = linearTicks(low, high, count);
  const step = inner.length > 1 ? inner[1]! - inner[0]! : Math.abs(high) || 1;
  const first = Math.floor(low / step + 1e-9) * step;
  const last = Math.ceil(high / step - 1e-9) * step;
  const ends = first === last ? [first - step, last + step] : [first, last];
  return { scale: linearScale(ends[0]!, ends[1]!), ticks: linearTicks(ends[0]!, ends[1]!, count + 2), format };
}

/** A linear axis that ends where its values end, a little air left at both sides. */
export function tightAxis(values: readonly number[], count: number, format: (value: number) => string): ChartAxis {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = 0.03 * (high - low || Math.abs(high) || 1);
  return { scale: linearScale(low - air, high + air), ticks: linearTicks(low - air, high + air, count), format };
}
