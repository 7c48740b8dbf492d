/** How the pipes, runners and banks of this engine lie: one intake or two, one row of cylinders or two. */
import type { EngineView } from "../../job/result.ts";
import { AXIS, type Lane } from "./tile.ts";

export type Layout = {
  readonly intake: readonly Lane[];
  readonly exhaust: readonly Lane[];
  readonly banks: readonly BankLayout[];
  /** the recirculation pipe above everything; null where there is none */
  readonly recirculation: Lane | null;
};

export type BankLayout = {
  readonly top: number;
  readonly bottom: number;
  readonly cylinders: number;
  /** heights of the runner axes */
  readonly runners: readonly number[];
  /** -1: its fuel rail lies above, +1: below */
  readonly railSide: -1 | 1;
};

export function layoutOf(engine: EngineView): Layout {
  const twoBanks = engine.banks === 2;
  const twoIntakes = twoBanks && engine.meterKinds.length === 2;
  const perBank = twoBanks ? Math.ceil(engine.cylinders / 2) : engine.cylinders;
  return {
    intake: twoIntakes
      ? [
          { axis: AXIS - 22, half: 8 },
          { axis: AXIS + 22, half: 8 },
        ]
      : [{ axis: AXIS, half: 11 }],
    exhaust: twoBanks
      ? [
          { axis: AXIS - 20, half: 6 },
          { axis: AXIS + 20, half: 6 },
        ]
      : [{ axis: AXIS, half: 8 }],
    banks: twoBanks
      ? [bank(AXIS - 38, AXIS - 4, perBank, -1), bank(AXIS + 4, AXIS + 38, engine.cylinders - perBank, 1)]
      : [bank(AXIS - 33, AXIS + 33, perBank, -1)],
    recirculation: engine.egr ? { axis: 12, half: 3.5 } : null,
  };
}

function bank(top: number, bottom: number, cylinders: number, railSide: -1 | 1): BankLayout {
  const count = Math.max(1, Math.min(cylinders, 8));
  const span = (bottom - top) * 0.84;
  const pitch = span / count;
  const first = (top + bottom) / 2 - span / 2 + pitch / 2;
  const runners = Array.from({ length: count }, (_, k) => Number((first + k * pitch).toFixed(2)));
  return { top, bottom, cylinders, runners, railSide };
}
