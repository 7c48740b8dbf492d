/** The picture that a specialist learns to read: departure of each witness against the air flow, log axis, 90 % bars. */
import type { SignatureView } from "../../job/result.ts";
import { bandPath, barPath, dashPath, linePath, type Place, STRETCHED } from "../charts/path.ts";
import { percentOf } from "../charts/scale.ts";
import { WitnessMark } from "../charts/witness-look.tsx";
import { WITNESS_WORDS } from "../words/card-words.ts";
import { formatNumber, formatPercent, NARROW_SPACE } from "../words/number-words.ts";
import type { TallyMark, TallyModel } from "./tally-model.ts";
import type { TallyNote } from "./tally-notes.ts";

type Props = { readonly model: TallyModel; readonly notes: readonly TallyNote[] };

/** px between the marks of one stretch, so that their bars stand side by side; less where there are many */
const dodge = (model: TallyModel) => (model.pointsShown > 40 ? 3 : 4.5);

export function TallyPicture({ model, notes }: Props) {
  return (
    <svg className="tally-picture" width="100%" height="100%" role="img" aria-label={spoken(model)}>
      <Axes model={model} />
      <svg width="100%" height="100%">
        <title>{spoken(model)}</title>
        {model.bands.map((band, k) => (
          <Band key={`${band.cause} ${band.witness}`} model={model} band={band} order={k} />
        ))}
        {notedLast(model.marks, notes).map(([mark, note]) => (
          <Mark key={`${mark.point.id} ${mark.witness}`} model={model} mark={mark} note={note} />
        ))}
      </svg>
    </svg>
  );
}

function Axes({ model }: { readonly model: TallyModel }) {
  return (
    <g className="axis">
      {model.yTicks.map((tick) => {
        const y = percentOf(model.y(Math.log1p(tick)));
        return (
          <g key={tick}>
            <line x1="0" x2="100%" y1={y} y2={y} className={tick === 0 ? "grid grid-nought" : "grid"} />
            <text x="-8" y={y} dy="0.35em" textAnchor="end">
              {tick === 0 ? "0" : formatPercent(tick)}
            </text>
          </g>
        );
      })}
      {model.xTicks.map((tick) => {
        const x = percentOf(model.x(tick));
        return (
          <g key={tick}>
            <svg x={x} y="100%" className="unclipped" aria-hidden="true">
              <line y1="0" y2="5" className="tick" />
              <text y="18" textAnchor="middle">
                {formatNumber(tick)}
              </text>
            </svg>
          </g>
        );
      })}
    </g>
  );
}

function Band({
  model,
  band,
  order,
}: {
  readonly model: TallyModel;
  readonly band: SignatureView;
  readonly order: number;
}) {
  const places = (values: readonly number[]): Place[] =>
    band.flow_g_per_s.map((flow, k) => {
      const value = values[k];
      return value === undefined || !Number.isFinite(value) ? null : { x: model.x(flow), y: model.y(value) };
    });
  return (
    <svg
      {...STRETCHED}
      width="100%"
      height="100%"
      aria-hidden="true"
      className={`band w-${band.witness} band-${order}`}
    >
      {followsFlow(band.departure) ? (
        <>
          <path className="band-area" d={bandPath(places(band.high90), places(band.low90))} />
          <path className="band-line" d={linePath(places(band.departure))} />
        </>
      ) : (
        <>
          <path className="band-area" d={barPath(places(band.high90), places(band.low90), DASH)} />
          <path className="band-line band-dashes" d={dashPath(places(band.departure), DASH)} />
        </>
      )}
    </svg>
  );
}

/** half width of a dash, as a share of the picture */
const DASH = 0.006;
/** A line that goes up and down by this many times its range joins stretches that have no flow in common but pressure or speed. */
const WANDERS = 2.5;

function followsFlow(values: readonly number[]): boolean {
  const range = Math.max(...values) - Math.min(...values);
  const travel = values.slice(1).reduce((sum, value, k) => sum + Math.abs(value - values[k]!), 0);
  return travel <= WANDERS * range;
}

function Mark({
  model,
  mark,
  note,
}: {
  readonly model: TallyModel;
  readonly mark: TallyMark;
  readonly note: TallyNote | null;
}) {
  const place = model.witnesses.indexOf(mark.witness) - (model.witnesses.length - 1) / 2;
  const isVague = model.vagueFrom !== null && mark.half > model.vagueFrom;
  const halfBar = percentOf(Math.abs(model.y(mark.half) - model.y(0)));
  return (
    <svg
      x={percentOf(model.x(mark.air))}
      y={percentOf(model.y(mark.departure))}
      className="unclipped"
      aria-hidden="true"
    >
      <g transform={`translate(${place * dodge(model)} 0)`} className={isVague ? "vague" : undefined}>
        <title>{markText(mark)}</title>
        <line className={`bar w-${mark.witness}`} y1={`-${halfBar}`} y2={halfBar} />
        <WitnessMark witness={mark.witness} open={note !== null} />
        {note !== null && (
          <text className="note-letter" x="9" y="-7">
            {note.letter}
          </text>
        )}
      </g>
    </svg>
  );
}

/** Marks with a letter are drawn last, over their neighbours. */
function notedLast(marks: readonly TallyMark[], notes: readonly TallyNote[]): [TallyMark, TallyNote | null][] {
  const noted = marks.map((mark): [TallyMark, TallyNote | null] => [mark, noteOn(mark, notes)]);
  return [...noted.filter(([, note]) => note === null), ...noted.filter(([, note]) => note !== null)];
}

function noteOn(mark: TallyMark, notes: readonly TallyNote[]): TallyNote | null {
  return notes.find((n) => n.witness === mark.witness && n.points.includes(mark.point.id)) ?? null;
}

/** "meter −11 % ± 3 % at 4.6 g/s of air (stretch 3)" */
export function markText(mark: TallyMark): string {
  return `${WITNESS_WORDS[mark.witness]} ${departureText(mark)} at ${formatNumber(mark.air)}${NARROW_SPACE}g/s of air (stretch ${mark.point.id})`;
}

/** "−11 % ± 3 %": the departure and the half width of its 90 % interval */
export function departureText({ departure, half }: { readonly departure: number; readonly half: number }): string {
  return `${formatPercent(Math.expm1(departure))} ± ${formatPercent(half, false)}`;
}

function spoken(model: TallyModel): string {
  const witnesses = model.witnesses.map((w) => WITNESS_WORDS[w]).join(", ");
  return `Departure of each witness (${witnesses}) from the common answer against the air flow, at ${model.pointsShown} steady stretches. The same numbers stand in the table below.`;
}
