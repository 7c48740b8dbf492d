/** Section "Air path": this engine as a line drawing, each station's witness and causes under (on a phone: beside) it. */
import type { CSSProperties } from "react";
import type { Outcome, StationView } from "../../job/result.ts";
import { chanceWords } from "../../quantities/index.ts";
import { FaultGlyph } from "../air-path/fault-glyph.tsx";
import { type FaultMark, faultMarks } from "../air-path/fault-marks.ts";
import { pathTiles, tileRoom } from "../air-path/path-tiles.ts";
import { anchorFor, straight, TILE_HEIGHT, type Tile } from "../air-path/tile.ts";
import { STATION_WORDS } from "../words/card-words.ts";
import { causeTitle } from "../words/cause-title.ts";
import { typeset } from "../words/typeset.ts";

type Variables = CSSProperties & { readonly [name: `--${string}`]: string | number };

export function AirPath({ outcome }: { readonly outcome: Outcome }) {
  const tiles = pathTiles(outcome.view.engine, outcome.view.stations);
  const marks = faultMarks(outcome);
  const said = (tile: Tile) => outcome.view.stations.filter((s) => s.station === tile.station);
  const drawn = new Set(tiles.map((t) => t.station));
  const columns = tiles.map((tile) => `${tileRoom(tile, said(tile))}fr`).join(" ");
  const style: Variables = { "--columns": columns };
  const marked = new Set(marks.map((m) => stationOf(outcome, m.cause)));
  // Captions of neighbours would run into each other: with several stations marked the words under them carry the colour.
  const several = marked.size > 1 ? "air-path air-path-several" : "air-path air-path-marked";
  return (
    <ol className={marks.length > 0 ? several : "air-path"} style={style}>
      {tiles.map((tile, k) => {
        const here = marks.filter((m) => stationOf(outcome, m.cause) === tile.station);
        // What is said of a station that this engine has no drawing for is never lost: it goes to the first tile.
        const stray = k === 0 ? outcome.view.stations.filter((s) => !drawn.has(s.station) && saysSomething(s)) : [];
        return (
          <Station key={tile.station} tile={tile} said={[...said(tile), ...stray]} marks={here} outcome={outcome} />
        );
      })}
    </ol>
  );
}

function saysSomething(station: StationView): boolean {
  return station.value !== null || station.causes.length > 0;
}

function stationOf(outcome: Outcome, cause: string): string | undefined {
  return outcome.view.causes[cause]?.station;
}

const LINE = { full: "line", thin: "thin" } as const;

type StationProps = {
  readonly tile: Tile;
  readonly said: readonly StationView[];
  readonly marks: readonly FaultMark[];
  readonly outcome: Outcome;
};

function Station({ tile, said, marks, outcome }: StationProps) {
  const width = tileRoom(tile, said);
  const shift = (width - tile.width) / 2;
  const anchorOf = (mark: FaultMark) => anchorFor(tile, mark.cause, mark.bank);
  const first = marks[0];
  const style: Variables = {
    "--w": width,
    "--at": first === undefined ? "50%" : `${(((anchorOf(first).x + shift) / width) * 100).toFixed(1)}%`,
  };
  return (
    <li className={`station station-${tile.station}`} style={style}>
      <div className="tile">
        <svg viewBox={`0 0 ${width} ${TILE_HEIGHT}`} aria-hidden="true">
          {(["full", "thin"] as const).map((weight) => (
            <path
              key={weight}
              className={LINE[weight]}
              d={straight(tile.left[weight], 0, shift) + straight(tile.right[weight], shift + tile.width, width)}
            />
          ))}
          <g transform={shift === 0 ? undefined : `translate(${shift} 0)`}>
            {tile.drawing}
            {marks.map((mark) => (
              <FaultGlyph key={mark.cause} cause={mark.cause} certain={mark.certain} anchor={anchorOf(mark)} />
            ))}
          </g>
        </svg>
        <svg className="pipe-on" viewBox={`0 0 ${TILE_HEIGHT} 10`} preserveAspectRatio="none" aria-hidden="true">
          {(["full", "thin"] as const).map((weight) => (
            <path
              key={weight}
              className={LINE[weight]}
              d={tile.right[weight].map((y) => `M${TILE_HEIGHT - y} 0V10`).join("")}
            />
          ))}
        </svg>
      </div>
      {marks.length > 0 && (
        <p className={marks.every((m) => toldBelow(m, said)) ? "callout callout-repeated" : "callout"}>
          <span className="unseen">{marks.some((m) => m.certain) ? "Here: " : "Perhaps here: "}</span>
          {marks.map((m) => causeTitle(outcome.view, m.cause, m.bank)).join("; ")}
        </p>
      )}
      <div className="said">
        {said.length === 0 && <p className="station-label">{STATION_WORDS[tile.station]}</p>}
        {said.map((s) => (
          <StationWords key={s.label} station={s} marks={marks} outcome={outcome} />
        ))}
      </div>
    </li>
  );
}

/** On a phone the words stand beside the drawing, so a mark that they repeat needs no caption of its own. */
function toldBelow(mark: FaultMark, said: readonly StationView[]): boolean {
  return said.some((s) => s.causes.some((c) => c.cause === mark.cause));
}

type WordsProps = {
  readonly station: StationView;
  readonly marks: readonly FaultMark[];
  readonly outcome: Outcome;
};

function StationWords({ station, marks, outcome }: WordsProps) {
  return (
    <div className="station-words">
      <p className="station-label">{station.label}</p>
      {station.value !== null && <p className="station-value">{typeset(station.value)}</p>}
      {station.detail !== "" && <p className="station-detail">{typeset(station.detail)}</p>}
      {station.causes.map((c) => (
        <p
          key={c.cause}
          className={marks.some((m) => m.cause === c.cause) ? "station-cause station-cause-marked" : "station-cause"}
        >
          {causeTitle(outcome.view, c.cause, null)} <span>{chanceWords(c.probability)}</span>
        </p>
      ))}
    </div>
  );
}
