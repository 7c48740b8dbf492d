/** The stations of this engine in the order of the air, each with its drawing. */
import type { EngineView, StationView } from "../../job/result.ts";
import { cylindersTile } from "./cylinders-tile.tsx";
import { exhaustTile } from "./exhaust-tile.tsx";
import { fuelTile } from "./fuel-tile.tsx";
import { compressorTile, ductTile, filterTile, meterTile, throttleTile } from "./intake-tiles.tsx";
import { layoutOf } from "./lanes.ts";
import { manifoldTile } from "./manifold-tile.tsx";
import type { Tile } from "./tile.ts";

export function pathTiles(engine: EngineView, said: readonly StationView[]): readonly Tile[] {
  const layout = layoutOf(engine);
  const meterSpeaks = said.some((s) => s.station === "meter" && s.value !== null);
  // A meter that is recorded but of no stated kind is drawn as a plain body.
  const kinds = engine.meterKinds.length === 0 && meterSpeaks ? ["not stated"] : engine.meterKinds;
  const direct = engine.injection === "direct";
  const tiles: readonly (Tile | null)[] = [
    filterTile(layout.intake),
    kinds.length > 0 ? meterTile(layout.intake, kinds) : null,
    ductTile(layout.intake),
    engine.boosted ? compressorTile(layout.intake) : null,
    engine.throttle ? throttleTile(layout.intake) : null,
    manifoldTile(layout),
    fuelTile(layout, direct),
    cylindersTile(layout, direct),
    exhaustTile(layout, engine.probe),
  ];
  return tiles.filter((tile) => tile !== null);
}

/** A station with a number needs room for its words, one with causes for theirs; one with a word alone less. */
const ROOM_FOR_NUMBERS = 122;
const ROOM_FOR_CAUSES = 104;
const ROOM_FOR_WORDS = 84;

export function tileRoom(tile: Tile, said: readonly StationView[]): number {
  if (said.length === 0) return tile.width;
  const causes = said.some((s) => s.causes.length > 0) ? ROOM_FOR_CAUSES : ROOM_FOR_WORDS;
  return Math.max(tile.width, said.some((s) => s.value !== null) ? ROOM_FOR_NUMBERS : causes);
}
