/**
 * What is done with the engine, step by step: a workshop protocol or a drive. Speeds in 1/s (`rpm` turns rev/min into them).
 * `load` is the share of the pressure (spark) or of the fuel (diesel) at full load; 1 is wide open.
 */
import type { SeededRandom } from "../numerics/index.ts";

export type Segment =
  | { readonly do: "key-on"; readonly seconds: number }
  | { readonly do: "idle"; readonly seconds: number; readonly accessoryTorque?: number }
  | { readonly do: "hold"; readonly seconds: number; readonly speed: number }
  | { readonly do: "snap"; readonly seconds: number }
  | {
      readonly do: "drive";
      readonly seconds: number;
      readonly speed: number;
      readonly load: number;
      readonly ramp?: number;
    }
  | { readonly do: "pull"; readonly seconds: number; readonly from: number; readonly to: number }
  | { readonly do: "overrun"; readonly seconds: number; readonly from: number; readonly to: number };

export type Protocol = readonly Segment[];

export const rpm = (revolutionsPerMinute: number): number => revolutionsPerMinute / 60;

export function protocolDuration(protocol: Protocol): number {
  return protocol.reduce((sum, segment) => sum + segment.seconds, 0);
}

/**
 * The standard recording: key on, warm idle, idle with loads, 2,500 rev/min, snap, one full-load pull, overrun, key off.
 * Pull and overrun stay below the largest speed of the engine.
 */
export function standardRecording(largestSpeed = rpm(6200)): Protocol {
  const top = 0.94 * largestSpeed;
  return [
    { do: "key-on", seconds: 10 },
    { do: "idle", seconds: 60 },
    { do: "idle", seconds: 20, accessoryTorque: 12 },
    { do: "idle", seconds: 20, accessoryTorque: 25 },
    { do: "idle", seconds: 10 },
    { do: "hold", seconds: 60, speed: rpm(2500) },
    { do: "idle", seconds: 12 },
    { do: "snap", seconds: 8 },
    { do: "drive", seconds: 8, speed: rpm(1600), load: 0.5 },
    { do: "pull", seconds: 9, from: rpm(1600), to: Math.min(rpm(5800), top) },
    { do: "overrun", seconds: 9, from: Math.min(rpm(5200), top), to: rpm(1300) },
    { do: "idle", seconds: 15 },
    { do: "key-on", seconds: 10 },
  ];
}

/** Road driving: steady stretches of mixed speed and load, gear changes and overruns between them. */
export function roadDriving(random: SeededRandom, seconds: number, top = rpm(3600)): Protocol {
  const segments: Segment[] = [];
  let left = seconds;
  while (left > 0) {
    const speed = rpm(1300) + (top - rpm(1300)) * random.uniform();
    const load = 0.3 + 0.62 * random.uniform() ** 1.3;
    const long = 7 + 9 * random.uniform();
    segments.push({ do: "drive", seconds: long, speed, load, ramp: 1.5 + 1.5 * random.uniform() });
    left -= long;
    if (random.uniform() < 0.25) {
      segments.push({ do: "overrun", seconds: 4, from: speed, to: Math.max(rpm(1200), speed * 0.7) });
      left -= 4;
    }
  }
  return segments;
}
