/**
 * Absolute load against flow: SAE J1979 defines it as the air of a cycle over 1.184 g/L times the displacement, so the two
 * columns together tell the displacement the engine computer believes in.
 */
import { ABSOLUTE_LOAD_DENSITY, type EngineDescription } from "../../engine/index.ts";
import type { Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import { heldAt, quantile } from "../held-track.ts";

const RUNNING = 400 / 60; // 1/s
const FEWEST = 20;
/** share by which the stated displacement may differ: polled channels are not simultaneous */
const TOLERANCE = 0.12;

export function checkLoad(set: ChannelSet, engine: EngineDescription | null): Warning[] {
  const load = bestChannel(set, "absoluteLoad");
  const flow = bestChannel(set, "meterFlow");
  const speed = bestChannel(set, "engineSpeed");
  if (load === undefined || flow === undefined || speed === undefined || engine === null) return [];
  const m = heldAt(flow, load.times);
  const n = heldAt(speed, load.times);
  const volumes = load.values.map((value, i) =>
    value > 0.05 && n[i]! > RUNNING && m[i]! > 0 ? (2 * m[i]!) / (n[i]! * ABSOLUTE_LOAD_DENSITY * value) : Number.NaN,
  );
  const known = volumes.filter((value) => !Number.isNaN(value));
  if (known.length < FEWEST) return [];
  const median = quantile(known, 0.5);
  const spread = quantile(known, 0.75) / quantile(known, 0.25) - 1;
  if (Math.abs(median / engine.displacement - 1) < TOLERANCE + spread) return [];
  const cm3 = (volume: number) => Math.round(volume * 1e6);
  return [
    {
      code: "displacement-contradiction",
      text: `"${load.source.header}" and "${flow.source.header}" together say a displacement of ${cm3(median)} cm3; ${cm3(engine.displacement)} cm3 are stated.`,
    },
  ];
}
