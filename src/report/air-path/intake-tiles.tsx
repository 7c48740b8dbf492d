/** Tiles from the filter to the throttle. */
import { METER_BODY, MeterGlyph } from "./meter-glyph.tsx";
import { type Anchor, AXIS, type Edge, type Lane, NO_EDGE, straight, type Tile, walls } from "./tile.ts";

type Lanes = readonly Lane[];

const pipes = (lanes: Lanes): Edge => ({ full: walls(lanes), thin: [] });

const outer = (lanes: Lanes) => ({
  top: Math.min(...walls(lanes)),
  bottom: Math.max(...walls(lanes)),
});

export function filterTile(lanes: Lanes): Tile {
  return {
    station: "filter",
    width: 122,
    left: NO_EDGE,
    right: pipes(lanes),
    anchor: { x: 75, y: AXIS, rx: 44, ry: (outer(lanes).bottom - outer(lanes).top) / 2 + 22 },
    drawing: lanes.map((lane) => {
      const reach = lane.half + 14;
      const [top, bottom] = [lane.axis - reach, lane.axis + reach];
      const upper = lane.axis - lane.half;
      const lower = lane.axis + lane.half;
      const pleats = Array.from(
        { length: 9 },
        (_, k) => `${k === 0 ? "M" : "L"}${51 + k * 6} ${k % 2 === 0 ? bottom - 7 : top + 7}`,
      );
      return (
        <g key={lane.axis}>
          <path
            className="line"
            d={`M14 ${upper - 7}Q17 ${upper} 26 ${upper}H42M14 ${lower + 7}Q17 ${lower} 26 ${lower}H42`}
          />
          <path className="thin" d={`M0 ${lane.axis}H22M17 ${lane.axis - 4}L22 ${lane.axis}L17 ${lane.axis + 4}`} />
          <rect className="solid" x="42" y={top} width="66" height={bottom - top} />
          <path className="thin" d={pleats.join("")} />
          <path className="line" d={straight([upper, lower], 108, 122)} />
        </g>
      );
    }),
  };
}

/** Meters share the lanes out; two meters in one lane stand one behind the other. */
export function meterTile(lanes: Lanes, kinds: readonly string[]): Tile {
  const perLane = Math.max(1, Math.ceil(kinds.length / lanes.length));
  const width = 44 + perLane * (METER_BODY + 18);
  const { top, bottom } = outer(lanes);
  return {
    station: "meter",
    width,
    left: pipes(lanes),
    right: pipes(lanes),
    anchor: { x: width / 2, y: AXIS - 3, rx: perLane * 33, ry: (bottom - top) / 2 + 18 },
    ...(lanes.length === 2 ? { bankAnchors: [meterAnchor(lanes[0], width), meterAnchor(lanes[1], width)] } : {}),
    drawing: (
      <g>
        <path className="line" d={straight(walls(lanes), 0, width)} />
        {kinds.map((kind, k) => {
          const lane = lanes[Math.floor(k / perLane)];
          const x = 31 + (k % perLane) * (METER_BODY + 18);
          return lane === undefined ? null : <MeterGlyph key={`${lane.axis} ${x}`} kind={kind} lane={lane} x={x} />;
        })}
      </g>
    ),
  };
}

function meterAnchor(lane: Lane | undefined, width: number): Anchor {
  return { x: width / 2, y: (lane?.axis ?? AXIS) - 4, rx: 33, ry: 22 };
}

export function ductTile(lanes: Lanes): Tile {
  const bellows = (y: number, side: 1 | -1) => `M0 ${y}H14${`q3.5 ${side * 8} 7 0`.repeat(5)}H63`;
  return {
    station: "duct",
    width: 63,
    left: pipes(lanes),
    right: pipes(lanes),
    anchor: { x: 31.5, y: outer(lanes).top - 4, rx: 26, ry: (outer(lanes).bottom - outer(lanes).top) / 2 + 12 },
    drawing: lanes.map((lane) => (
      <path
        key={lane.axis}
        className="line"
        d={bellows(lane.axis - lane.half, -1) + bellows(lane.axis + lane.half, 1)}
      />
    )),
  };
}

/** The wheel, drawn narrowing with the flow as on a plant diagram, then the charge pipe and the cooler. */
export function compressorTile(lanes: Lanes): Tile {
  const { top, bottom } = outer(lanes);
  const cooler = { x: 88, width: 46, top: Math.min(top - 12, AXIS - 24), bottom: Math.max(bottom + 12, AXIS + 24) };
  const fins = Array.from({ length: 6 }, (_, k) => cooler.x + (k + 1) * (cooler.width / 7));
  return {
    station: "compressor",
    width: 150,
    left: pipes(lanes),
    right: pipes(lanes),
    anchor: { x: 72, y: AXIS, rx: 68, ry: (cooler.bottom - cooler.top) / 2 + 7 },
    anchors: { "boost-leak": { x: 68, y: top, rx: 0, ry: 0 } },
    drawing: (
      <g>
        <path className="line" d={straight(walls(lanes), 0, 150)} />
        {lanes.map(({ axis, half }) => (
          <g key={axis}>
            <path
              className="solid"
              d={`M14 ${axis - half - 10}L48 ${axis - half}V${axis + half}L14 ${axis + half + 10}Z`}
            />
            <path
              className="thin"
              d={`M20 ${axis + half}L42 ${axis - half + 5}M20 ${axis - half}L42 ${axis + half - 5}`}
            />
          </g>
        ))}
        <rect className="solid" x={cooler.x} y={cooler.top} width={cooler.width} height={cooler.bottom - cooler.top} />
        <path className="thin" d={fins.map((x) => `M${x} ${cooler.top + 5}V${cooler.bottom - 5}`).join("")} />
      </g>
    ),
  };
}

export function throttleTile(lanes: Lanes): Tile {
  return {
    station: "throttle",
    width: 58,
    left: pipes(lanes),
    right: pipes(lanes),
    anchor: { x: 29, y: AXIS, rx: 21, ry: (outer(lanes).bottom - outer(lanes).top) / 2 + 11 },
    drawing: lanes.map(({ axis, half }) => (
      <g key={axis}>
        <path className="line" d={straight([axis - half, axis + half], 0, 58)} />
        <path
          className="bold"
          d={`M${29 - half * 0.55} ${axis + half - 1.5}L${29 + half * 0.55} ${axis - half + 1.5}`}
        />
        <circle className="solid" cx="29" cy={axis} r="2.4" />
      </g>
    )),
  };
}
