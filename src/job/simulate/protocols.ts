/**
 * What can be done with the engine while it is recorded, by name. A protocol is a fixed part, something that fills the time left of
 * the duration asked for, and a fixed end; one that nothing fills has the length it has.
 */
import {
  type Protocol,
  protocolDuration,
  roadDriving,
  rpm,
  type Segment,
  standardRecording,
} from "../../model-engine/index.ts";
import { type SeededRandom, seededRandom } from "../../numerics/index.ts";
import { formatQuantity, type Result, success } from "../../quantities/index.ts";
import { type OptionReason, optionFailure } from "../meter/option-values.ts";

type Named = {
  readonly does: string;
  /** `top`: largest speed of the engine, 1/s */
  readonly begin: (top: number) => Protocol;
  readonly fill?: {
    /** s, where no duration is asked for */
    readonly usually: number;
    readonly make: (random: SeededRandom, seconds: number, top: number) => Protocol;
  };
  readonly end: (top: number) => Protocol;
};

const keyOn: Segment = { do: "key-on", seconds: 10 };
const ROAD = {
  usually: 240,
  make: (random: SeededRandom, seconds: number, top: number) => roadDriving(random, seconds, 0.6 * top),
};

export const PROTOCOLS = {
  standard: {
    does: "the standard recording: key on, warm idle, idle with loads, 2,500 rev/min, snap, one full-load pull, overrun, key off",
    begin: (top) => standardRecording(top),
    end: () => [],
  },
  "standard-and-road": {
    does: "the standard recording, then road driving",
    begin: (top) => standardRecording(top),
    fill: ROAD,
    end: () => [],
  },
  thorough: {
    does: "key on, warm idle, idle with loads, 2,500 rev/min, snap, wide open at low speed, one full-load pull, overrun, road driving, idle, key off",
    begin: thoroughBegin,
    fill: { ...ROAD, usually: 214 },
    end: () => [{ do: "idle", seconds: 15 }, keyOn],
  },
  idle: {
    does: "key on, idle with two loads, warm idle, key off: the engine never leaves the workshop",
    begin: () => [
      keyOn,
      { do: "idle", seconds: 15 },
      { do: "idle", seconds: 15, accessoryTorque: 12 },
      { do: "idle", seconds: 15, accessoryTorque: 25 },
    ],
    fill: { usually: 60, make: (_, seconds) => [{ do: "idle", seconds }] },
    end: () => [keyOn],
  },
  road: {
    does: "key on, idle, road driving, idle: no full load",
    begin: () => [keyOn, { do: "idle", seconds: 20 }],
    fill: ROAD,
    end: () => [{ do: "idle", seconds: 15 }],
  },
  pulls: {
    does: "key on, idle, three full-load pulls with overrun between them, idle, key off",
    begin: (top) => [keyOn, { do: "idle", seconds: 20 }, ...[0.45, 0.7, 0.94].flatMap((share) => pull(share * top))],
    end: () => [{ do: "idle", seconds: 15 }, keyOn],
  },
} as const satisfies { readonly [name: string]: Named };

export type ProtocolName = keyof typeof PROTOCOLS;
export const PROTOCOL_NAMES = Object.keys(PROTOCOLS) as readonly ProtocolName[];

/** s */
export const LONGEST_RECORDING = 3600;

/** How long a protocol is, s: the least, and without a duration asked for. Equal where nothing fills it. */
export function lengthsOf(name: ProtocolName, top: number): { readonly least: number; readonly usual: number } {
  const { begin, fill, end }: Named = PROTOCOLS[name];
  const least = protocolDuration(begin(top)) + protocolDuration(end(top));
  return { least, usual: least + (fill?.usually ?? 0) };
}

/** `duration`: s in all, or null for the usual one. The seed decides the road. */
export function makeProtocol(wanted: {
  readonly name: ProtocolName;
  readonly duration: number | null;
  readonly seed: number;
  readonly top: number;
}): Result<Protocol, OptionReason> {
  const { name, duration, seed, top } = wanted;
  const { begin, fill, end }: Named = PROTOCOLS[name];
  const { least, usual } = lengthsOf(name, top);
  const told = (seconds: number) => formatQuantity(seconds, "s", 5);
  if (duration !== null && duration < least)
    return optionFailure(
      `The protocol ${name} takes ${told(least)}; ${told(duration)} are too short for it.`,
      "Give a longer duration, or another protocol.",
    );
  if (fill === undefined && duration !== null && duration > least)
    return optionFailure(
      `The protocol ${name} takes ${told(least)}, no more and no less.`,
      "Leave the duration away, or take another protocol.",
    );
  const left = (duration ?? usual) - least;
  const filling = fill === undefined ? [] : fill.make(seededRandom(seed).fork("road"), left, top);
  return success([...begin(top), ...cutTo(filling, left), ...end(top)]);
}

function cutTo(protocol: Protocol, seconds: number): Protocol {
  const kept: Segment[] = [];
  let left = seconds;
  for (const segment of protocol) {
    if (left <= 0) break;
    kept.push({ ...segment, seconds: Math.min(segment.seconds, left) });
    left -= segment.seconds;
  }
  return kept;
}

function thoroughBegin(top: number): Protocol {
  const high = Math.min(rpm(5600), 0.9 * top);
  return [
    keyOn,
    { do: "idle", seconds: 60 },
    { do: "idle", seconds: 20, accessoryTorque: 10 },
    { do: "idle", seconds: 20, accessoryTorque: 22 },
    { do: "idle", seconds: 12 },
    { do: "hold", seconds: 60, speed: rpm(2500) },
    { do: "idle", seconds: 10 },
    { do: "snap", seconds: 8 },
    { do: "drive", seconds: 8, speed: rpm(1250), load: 0.5 },
    { do: "drive", seconds: 16, speed: rpm(1150), load: 1, ramp: 1 },
    { do: "drive", seconds: 8, speed: rpm(1700), load: 0.45 },
    { do: "pull", seconds: 10, from: rpm(1700), to: high },
    { do: "overrun", seconds: 9, from: Math.min(rpm(4800), high), to: rpm(1400) },
  ];
}

function pull(to: number): Segment[] {
  return [
    { do: "drive", seconds: 8, speed: rpm(1500), load: 0.45 },
    { do: "pull", seconds: 9, from: rpm(1500), to },
    { do: "overrun", seconds: 6, from: to, to: rpm(1300) },
  ];
}
