/**
 * The recording over time: the states of the engine, the steady stretches that became operating points, and several
 * traces one above the other, each on its own scale. Everything is placed in per cent, so it fills its column.
 */
import type { TimelineView } from "../../job/result.ts";
import { linePath, STRETCHED } from "../charts/path.ts";
import { linearScale, percentOf, type Scale, timeTicks } from "../charts/scale.ts";
import { countWord } from "../words/cause-title.ts";
import { formatDuration, formatNumber, formatUnit } from "../words/number-words.ts";

type Trace = TimelineView["traces"][number];
type Span = { readonly start_s: number; readonly end_s: number };

export function Timeline({ timeline }: { readonly timeline: TimelineView }) {
  const x = linearScale(0, timeline.duration_s > 0 ? timeline.duration_s : 1);
  const states = [...new Set(timeline.states.map((s) => s.state))];
  return (
    <figure className="timeline">
      <figcaption>{spoken(timeline, states)}</figcaption>
      {states.map((state) => (
        <Strip key={state} name={spaced(state)} x={x} spans={timeline.states.filter((s) => s.state === state)} />
      ))}
      <Strip name="steady stretches" x={x} spans={timeline.steady} strong />
      {timeline.traces.map((trace) => (
        <TraceRow key={`${trace.quantity} ${trace.label}`} trace={trace} x={x} steady={timeline.steady} />
      ))}
      <div className="timeline-row" aria-hidden="true">
        <span className="timeline-name">time</span>
        <svg className="timeline-axis axis" width="100%" height="22" aria-hidden="true">
          {timeTicks(timeline.duration_s, 7).map((tick) => (
            <svg key={tick} x={percentOf(x(tick))} className="unclipped" aria-hidden="true">
              <line y1="0" y2="5" className="tick" />
              <text y="17" textAnchor={tick === 0 ? "start" : x(tick) > 0.97 ? "end" : "middle"}>
                {tick === 0 ? "0" : formatDuration(tick)}
              </text>
            </svg>
          ))}
        </svg>
      </div>
    </figure>
  );
}

type StripProps = {
  readonly name: string;
  readonly x: Scale;
  readonly spans: readonly Span[];
  readonly strong?: boolean;
};

function Strip({ name, x, spans, strong = false }: StripProps) {
  return (
    <div className="timeline-row" aria-hidden="true">
      <span className="timeline-name">{name}</span>
      <svg className={strong ? "strip strip-strong" : "strip"} width="100%" height="10" aria-hidden="true">
        <line x1="0" x2="100%" y1="5" y2="5" />
        {spans.map((s) => (
          <rect
            key={s.start_s}
            x={percentOf(x(s.start_s))}
            width={width(s, x)}
            y={strong ? 1 : 3}
            height={strong ? 8 : 4}
          />
        ))}
      </svg>
    </div>
  );
}

function TraceRow({
  trace,
  x,
  steady,
}: {
  readonly trace: Trace;
  readonly x: Scale;
  readonly steady: readonly Span[];
}) {
  const known = trace.values.filter((v) => v !== null);
  const [low, high] = extremes(known);
  const y = linearScale(high, low);
  const places = trace.values.map((value, k) => {
    const time = trace.time_s[k];
    return value === null || time === undefined ? null : { x: x(time), y: 0.04 + 0.92 * y(value) };
  });
  return (
    <div className="timeline-row" aria-hidden="true">
      <span className="timeline-name">
        {trace.label}
        <span className="timeline-scale">
          {formatNumber(low)} to {formatNumber(high)} {formatUnit(trace.unit)}
        </span>
      </span>
      <svg className="trace" width="100%" height="46" aria-hidden="true">
        {steady.map((s) => (
          <rect
            key={s.start_s}
            className="steady"
            x={percentOf(x(s.start_s))}
            width={width(s, x)}
            y="0"
            height="100%"
          />
        ))}
        <svg {...STRETCHED} width="100%" height="100%">
          <title>{trace.label}</title>
          <path d={linePath(places)} />
        </svg>
      </svg>
    </div>
  );
}

function width(span: Span, x: Scale): string {
  return percentOf(Math.max(0.001, x(span.end_s) - x(span.start_s)));
}

/** Not Math.min(...values): a trace may be longer than a call may have arguments. */
function extremes(values: readonly number[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low <= high ? [low, high] : [0, 0];
}

/** "closed-loop" -> "closed loop" */
function spaced(state: string): string {
  return state.replaceAll("-", " ");
}

function spoken(timeline: TimelineView, states: readonly string[]): string {
  const steady = `${countWord(timeline.steady.length)} steady stretch${timeline.steady.length === 1 ? "" : "es"}`;
  const found = states.length === 0 ? "" : ` States: ${states.map(spaced).join(", ")}.`;
  return `${formatDuration(timeline.duration_s)} of running, ${steady} marked.${found}`;
}
