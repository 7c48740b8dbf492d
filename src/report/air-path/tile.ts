/**
 * The air path is drawn in tiles, one for each station, side by side at one scale so that their lines join. A tile is
 * drawn with the air going from left to right; on a phone the style sheet turns it, and the air runs down the page.
 */
import type { ReactNode } from "react";
import type { Station } from "../../job/result.ts";

export const TILE_HEIGHT = 136;
export const AXIS = 72;

/** A pipe seen from the side: where its axis lies and half its width. */
export type Lane = { readonly axis: number; readonly half: number };

/** Where a fault is marked: the surface an arrow points at, or the centre and radii of a ring. */
export type Anchor = { readonly x: number; readonly y: number; readonly rx: number; readonly ry: number };

/** Heights of the walls (drawn full) and of runners and small pipes (drawn thin) at an edge. */
export type Edge = { readonly full: readonly number[]; readonly thin: readonly number[] };

export type Tile = {
  readonly station: Station;
  readonly width: number;
  readonly drawing: ReactNode;
  /** what crosses the left and the right edge */
  readonly left: Edge;
  readonly right: Edge;
  readonly anchor: Anchor;
  /** where each bank of the station is marked, for a cause that names its bank */
  readonly bankAnchors?: readonly [Anchor, Anchor];
  /** for causes that live in one part of the station */
  readonly anchors?: { readonly [cause: string]: Anchor };
};

export const NO_EDGE: Edge = { full: [], thin: [] };

export function walls(lanes: readonly Lane[]): number[] {
  return lanes.flatMap((lane) => [lane.axis - lane.half, lane.axis + lane.half]);
}

/** Where a mark goes: at its bank, else at the part that its cause lives in, else at the station. */
export function anchorFor(tile: Tile, cause: string, bank: 1 | 2 | null): Anchor {
  const ofBank = bank === null ? undefined : tile.bankAnchors?.[bank - 1];
  return ofBank ?? tile.anchors?.[cause] ?? tile.anchor;
}

/** The path of straight walls between two places. */
export function straight(heights: readonly number[], from: number, to: number): string {
  return heights.map((y) => `M${from} ${y}H${to}`).join("");
}
