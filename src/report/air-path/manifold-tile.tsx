/** The manifold with its pressure sensor and, where there is one, the EGR valve. */
import type { Layout } from "./lanes.ts";
import { recirculationWalls, runnerWalls } from "./small-pipes.ts";
import { straight, type Tile, walls } from "./tile.ts";

export function manifoldTile(layout: Layout): Tile {
  const top = Math.min(...layout.banks.map((b) => b.top)) + 8;
  const bottom = Math.max(...layout.banks.map((b) => b.bottom)) - 8;
  const [upper, lower] = [Math.min(...walls(layout.intake)), Math.max(...walls(layout.intake))];
  const between = walls(layout.intake).slice(1, -1);
  const pipe = layout.recirculation;
  const valve = { x: 104, y: (top + 12) / 2 + 2 };
  return {
    station: "manifold",
    width: 136,
    left: { full: walls(layout.intake), thin: [] },
    right: { full: [], thin: [...runnerWalls(layout), ...recirculationWalls(layout)] },
    anchor: { x: 66, y: (top + bottom) / 2, rx: 58, ry: (bottom - top) / 2 + 8 },
    anchors: {
      "manifold-leak": { x: 46, y: top, rx: 0, ry: 0 },
      "map-biased": { x: 78, y: top - 12, rx: 13, ry: 11 },
      "map-scaled": { x: 78, y: top - 12, rx: 13, ry: 11 },
      "egr-stuck-open": { x: valve.x, y: valve.y, rx: 13, ry: 13 },
      "egr-low-flow": { x: valve.x, y: valve.y, rx: 13, ry: 13 },
    },
    drawing: (
      <g>
        <path
          className="line"
          d={`M0 ${upper}Q15 ${upper} 17 ${top + 6}Q18 ${top} 24 ${top}H118V${bottom}H24Q18 ${bottom} 17 ${bottom - 6}Q15 ${lower} 0 ${lower}`}
        />
        <path className="line" d={straight(between, 0, 16)} />
        <path className="thin" d={straight(runnerWalls(layout), 118, 136)} />
        <path className="thin" d={`M78 ${top}V${top - 7}`} />
        <rect className="solid" x="72" y={top - 15} width="12" height="8" />
        {pipe !== null && (
          <g>
            <path
              className="thin"
              d={`M136 ${pipe.axis - pipe.half}H${valve.x - pipe.half}V${top}M136 ${pipe.axis + pipe.half}H${valve.x + pipe.half}V${top}`}
            />
            <path
              className="solid"
              d={`M${valve.x - 6} ${valve.y - 6}H${valve.x + 6}L${valve.x - 6} ${valve.y + 6}H${valve.x + 6}Z`}
            />
          </g>
        )}
      </g>
    ),
  };
}
