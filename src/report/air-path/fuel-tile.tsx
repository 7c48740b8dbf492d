/** The runners and the fuel rail. */
import type { Layout } from "./lanes.ts";
import { perBank, RUNNER_HALF, railHeight, recirculationWalls, runnerWalls } from "./small-pipes.ts";
import { AXIS, straight, type Tile } from "./tile.ts";

/** Runners, and the rail above them: with injectors into the runners, or (direct) lines on to the cylinders. */
export function fuelTile(layout: Layout, direct: boolean): Tile {
  const width = 76;
  const first = layout.banks[0];
  return {
    station: "fuel",
    width,
    left: { full: [], thin: [...runnerWalls(layout), ...recirculationWalls(layout)] },
    right: {
      full: [],
      thin: [...runnerWalls(layout), ...recirculationWalls(layout), ...(direct ? layout.banks.map(railHeight) : [])],
    },
    anchor: { x: 38, y: first === undefined ? AXIS : railHeight(first) + 4, rx: 34, ry: 15 },
    ...perBank(layout.banks, (bank) => ({ x: 38, y: railHeight(bank) - bank.railSide * 4, rx: 34, ry: 15 })),
    drawing: (
      <g>
        <path className="thin" d={straight([...runnerWalls(layout), ...recirculationWalls(layout)], 0, width)} />
        {layout.banks.map((bank) => {
          const rail = railHeight(bank);
          const runner = (bank.railSide === -1 ? bank.runners[0] : bank.runners.at(-1)) ?? AXIS;
          const end = runner + bank.railSide * RUNNER_HALF;
          return (
            <g key={bank.top}>
              {direct && <path className="thin" d={`M60 ${rail}H${width}`} />}
              <rect className="solid" x="14" y={rail - 3.5} width="46" height="7" />
              {!direct && (
                <>
                  <path className="line" d={`M38 ${rail - bank.railSide * 3.5}V${end + bank.railSide * 3}`} />
                  <path className="ink-fill" d={`M35 ${end + bank.railSide * 6}H41L38 ${end}Z`} />
                </>
              )}
            </g>
          );
        })}
      </g>
    ),
  };
}
