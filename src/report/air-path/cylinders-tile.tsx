/** The cylinders: as many as the engine has, in one row or two. */
import type { BankLayout, Layout } from "./lanes.ts";
import { perBank, railHeight, recirculationWalls, runnerWalls } from "./small-pipes.ts";
import { straight, type Tile, walls } from "./tile.ts";

export function cylindersTile(layout: Layout, direct: boolean): Tile {
  const most = Math.max(...layout.banks.map((b) => b.cylinders));
  const bore = most > 6 ? 12 : most > 4 ? 15 : 17;
  const block = Math.max(48, most * bore + 8);
  const width = block + 14;
  const [top, bottom] = [Math.min(...layout.banks.map((b) => b.top)), Math.max(...layout.banks.map((b) => b.bottom))];
  return {
    station: "cylinders",
    width,
    left: { full: [], thin: [...runnerWalls(layout), ...recirculationWalls(layout)] },
    right: { full: walls(layout.exhaust), thin: recirculationWalls(layout) },
    anchor: { x: block / 2, y: (top + bottom) / 2, rx: block / 2 + 7, ry: (bottom - top) / 2 + 7 },
    ...perBank(layout.banks, (bank) => ({
      x: block / 2,
      y: (bank.top + bank.bottom) / 2,
      rx: block / 2 + 7,
      ry: (bank.bottom - bank.top) / 2 + 7,
    })),
    drawing: (
      <g>
        <path className="thin" d={straight(recirculationWalls(layout), 0, width)} />
        <path className="line" d={straight(walls(layout.exhaust), block, width)} />
        {layout.banks.map((bank) => (
          <Bank key={bank.top} bank={bank} bore={bore} block={block} direct={direct} />
        ))}
      </g>
    ),
  };
}

type BankProps = { readonly bank: BankLayout; readonly bore: number; readonly block: number; readonly direct: boolean };

function Bank({ bank, bore, block, direct }: BankProps) {
  const start = (block - bank.cylinders * bore) / 2;
  const [top, height] = [bank.top + 6, bank.bottom - bank.top - 12];
  const rail = railHeight(bank);
  const edge = bank.railSide === -1 ? bank.top : bank.bottom;
  const centres = Array.from({ length: bank.cylinders }, (_, k) => start + (k + 0.5) * bore);
  return (
    <g>
      <rect className="solid" x="0" y={bank.top} width={block} height={bank.bottom - bank.top} />
      {centres.map((centre, k) => {
        const crown = top + height * (0.16 + 0.5 * pistonTravel(k, bank.cylinders));
        return (
          <g key={centre}>
            <rect className="thin" x={centre - bore / 2 + 2} y={top} width={bore - 4} height={height} />
            <path className="line" d={`M${centre - bore / 2 + 2} ${crown}h${bore - 4}m0 ${height * 0.2}h${4 - bore}`} />
          </g>
        );
      })}
      {direct && (
        <path
          className="thin"
          d={`M0 ${rail}H${centres.at(-1) ?? 0}${centres.map((x) => `M${x} ${rail}V${edge}`).join("")}`}
        />
      )}
    </g>
  );
}

/** 0 at the top, 1 at the bottom: as the cranks of an in-line engine stand when the first is at the top. */
function pistonTravel(k: number, count: number): number {
  const even = count % 2 === 0 && count > 2;
  const throws = even ? count / 2 : count;
  const place = even ? Math.min(k, count - 1 - k) : k;
  return (1 - Math.cos((2 * Math.PI * place) / throws)) / 2;
}
