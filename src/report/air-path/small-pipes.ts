/** The small pipes that cross from tile to tile after the manifold: runners, recirculation, fuel rails. */
import type { BankLayout, Layout } from "./lanes.ts";
import { type Anchor, walls } from "./tile.ts";

export const RUNNER_HALF = 2.3;

export function runnerWalls({ banks }: Layout): number[] {
  return banks.flatMap((bank) =>
    bank.runners.flatMap((y) => (bank.runners.length > 4 ? [y] : [y - RUNNER_HALF, y + RUNNER_HALF])),
  );
}

export function recirculationWalls({ recirculation }: Layout): number[] {
  return recirculation === null ? [] : walls([recirculation]);
}

export function railHeight(bank: BankLayout): number {
  return bank.railSide === -1 ? bank.top - 8 : bank.bottom + 8;
}

/** A place for each bank, where there are two. */
export function perBank<Part>(
  parts: readonly Part[],
  place: (part: Part) => Anchor,
): { bankAnchors?: [Anchor, Anchor] } {
  const [first, second] = parts;
  return first === undefined || second === undefined ? {} : { bankAnchors: [place(first), place(second)] };
}
