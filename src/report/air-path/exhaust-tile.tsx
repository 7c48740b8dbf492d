/** The exhaust with its probes, and where recirculated gas leaves it. */
import type { EngineView } from "../../job/result.ts";
import type { Layout } from "./lanes.ts";
import { perBank, recirculationWalls } from "./small-pipes.ts";
import { AXIS, NO_EDGE, straight, type Tile, walls } from "./tile.ts";

export function exhaustTile(layout: Layout, probe: EngineView["probe"]): Tile {
  const width = 128;
  const pipe = layout.recirculation;
  const first = layout.exhaust[0];
  const top = first === undefined ? AXIS : first.axis - first.half;
  return {
    station: "exhaust",
    width,
    left: { full: walls(layout.exhaust), thin: recirculationWalls(layout) },
    right: NO_EDGE,
    anchor: { x: 62, y: AXIS, rx: 56, ry: 34 },
    ...perBank(layout.exhaust, (lane) => ({ x: 72, y: lane.axis + Math.sign(lane.axis - AXIS) * 12, rx: 14, ry: 20 })),
    anchors: {
      "exhaust-air-added": { x: 46, y: top, rx: 0, ry: 0 },
      "lambda-biased": { x: 72, y: top - 14, rx: 12, ry: 16 },
    },
    drawing: (
      <g>
        {layout.exhaust.map((lane, k) => {
          const side = k === 0 ? -1 : 1;
          const wall = lane.axis + side * lane.half;
          return (
            <g key={lane.axis}>
              <path className="line" d={straight(walls([lane]), 0, 106)} />
              <path
                className="thin"
                d={`M98 ${lane.axis}H126M121 ${lane.axis - 4}L126 ${lane.axis}L121 ${lane.axis + 4}`}
              />
              {probe !== "none" && (
                <g>
                  <path className="line" d={`M72 ${lane.axis}V${wall + side * 12}`} />
                  <rect className="solid" x="67" y={side === -1 ? wall - 21 : wall + 12} width="10" height="9" />
                </g>
              )}
            </g>
          );
        })}
        {pipe !== null && (
          <path
            className="thin"
            d={`M0 ${pipe.axis - pipe.half}H${20 + pipe.half}V${top}M0 ${pipe.axis + pipe.half}H${20 - pipe.half}V${top}`}
          />
        )}
      </g>
    ),
  };
}
