/** From a channel set to operating points and key-on readings. */
import type { EngineDescription } from "../../engine/index.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import type { EngineState, StateSpan } from "../states/state-span.ts";
import type { KeyOnReading, OperatingPoint, Reading, ReadingKey } from "./operating-point.ts";
import { readWindow } from "./read-window.ts";
import { type KeyChannel, steadyWindows, type Window } from "./steady-windows.ts";

/** s, how long a reading of a slow channel stays usable */
const MEMORY = 120;
/** points kept of one region: more of the same adds little (shared discrepancy) and costs time */
const MOST_PER_REGION = 5;
const MOST_POINTS = 150;
/** moving windows speak only where a region has fewer steady ones than this */
const MOVING_KEPT = 3;
const STANDING_STILL = 50 / 60; // rev/s
/** share of a window that a state must cover to be named */
const MOSTLY = 0.6;

export type OperatingData = {
  readonly points: readonly OperatingPoint[];
  readonly keyOn: readonly KeyOnReading[];
  /** what is stated of the surroundings of each recording, in the order of their indices; absent: the engine file's holds for all */
  readonly sites?: readonly EngineDescription["site"][];
};

export function findOperatingPoints(
  set: ChannelSet,
  states: readonly StateSpan[],
  recording: number,
  firstId: number,
): OperatingData {
  // Commands (lambda, EGR, purge) are needed as commands; each is asked for by its own name, never as a witness.
  const usable = set.channels.filter(
    (c) => (c.standing === "measured" || c.standing === "set-point") && c.values.length > 0,
  );
  const best = bestChannels(usable);
  const speed = best.get("engineSpeed");
  const keyOn = keyOnReadings(best, states, recording);
  if (speed === undefined) return { points: [], keyOn };
  const keys = keyChannels(best, speed);
  // Only what sorts the windows is read of all of them; the other channels are read of those that are kept.
  const sorting = new Map([...best].filter(([key]) => SORTING.has(key)));
  const candidates: Candidate[] = [];
  for (const stretch of set.stretches) {
    for (const window of steadyWindows(keys, stretch.start, stretch.end)) {
      const candidate = condense(window, sorting, states);
      if (candidate !== null) candidates.push(candidate);
    }
  }
  const points = thin(candidates).map(({ window, states: present, region }, i) => ({
    id: firstId + i,
    recording,
    start: window.start,
    end: window.end,
    states: present,
    region,
    readings: readingsDuring(best, window),
  }));
  return { points, keyOn };
}

const SORTING: ReadonlySet<ReadingKey> = new Set<ReadingKey>([
  "engineSpeed",
  "manifoldPressure",
  "meterFlow",
  "meterFlow:1",
  "meterVoltage",
]);

type Candidate = {
  readonly window: Window;
  readonly states: readonly EngineState[];
  readonly region: string;
  readonly roughness: number;
};

/** One channel a quantity and bank: the most confidently recognised. */
function bestChannels(channels: readonly RecognisedChannel[]): Map<ReadingKey, RecognisedChannel> {
  const best = new Map<ReadingKey, RecognisedChannel>();
  for (const channel of channels) {
    const key: ReadingKey = channel.bank === null ? channel.quantity : `${channel.quantity}:${channel.bank}`;
    const present = best.get(key);
    if (present === undefined || channel.confidence > present.confidence) best.set(key, channel);
  }
  return best;
}

/** What must hold still. The meter breathes more than the pressure, and both more than the speed. */
function keyChannels(best: ReadonlyMap<ReadingKey, RecognisedChannel>, speed: RecognisedChannel): KeyChannel[] {
  const keys: KeyChannel[] = [{ channel: speed, slack: 1 }];
  const pressure = best.get("manifoldPressure");
  if (pressure !== undefined) keys.push({ channel: pressure, slack: 1.6 });
  for (const key of ["meterFlow", "meterFlow:1", "meterFlow:2", "meterVolumeFlow", "meterFrequency"] as const) {
    const meter = best.get(key);
    if (meter !== undefined) keys.push({ channel: meter, slack: 2.2 });
  }
  const volts = best.get("meterVoltage");
  if (volts !== undefined) keys.push({ channel: volts, slack: 1 });
  return keys;
}

function condense(
  window: Window,
  best: ReadonlyMap<ReadingKey, RecognisedChannel>,
  states: readonly StateSpan[],
): Candidate | null {
  const readings = readingsDuring(best, window);
  const speed = readings.get("engineSpeed");
  if (speed === undefined || speed.low < STANDING_STILL) return null;
  const present = statesDuring(states, window);
  if (present.includes("cranking") || present.includes("key-on")) return null;
  return { window, states: present, region: regionOf(readings, speed.mean), roughness: roughness(readings) };
}

function readingsDuring(
  best: ReadonlyMap<ReadingKey, RecognisedChannel>,
  { start, end }: { readonly start: number; readonly end: number },
): Map<ReadingKey, Reading> {
  const readings = new Map<ReadingKey, Reading>();
  for (const [key, channel] of best) {
    const reading = readWindow(channel, start, end, MEMORY);
    if (reading !== null) readings.set(key, reading);
  }
  return readings;
}

function statesDuring(states: readonly StateSpan[], window: Window): EngineState[] {
  const covered = new Map<EngineState, number>();
  for (const span of states) {
    const overlap = Math.min(span.end, window.end) - Math.max(span.start, window.start);
    if (overlap > 0) covered.set(span.state, (covered.get(span.state) ?? 0) + overlap);
  }
  return [...covered].filter(([, time]) => time >= MOSTLY * (window.end - window.start)).map(([state]) => state);
}

/** Cells of about a fifth in speed and a quarter in pressure (or in air a revolution where no pressure is known). */
function regionOf(readings: ReadonlyMap<ReadingKey, Reading>, speed: number): string {
  const load = readings.get("manifoldPressure")?.mean;
  const meter =
    readings.get("meterFlow")?.mean ?? readings.get("meterFlow:1")?.mean ?? readings.get("meterVoltage")?.mean;
  const filling = load ?? (meter === undefined ? 1 : (1e9 * meter) / speed);
  return `${Math.round(Math.log(speed) / 0.2)}/${Math.round(Math.log(Math.max(filling, 1e-9)) / 0.25)}`;
}

function roughness(readings: ReadonlyMap<ReadingKey, Reading>): number {
  let worst = 0;
  for (const key of ["engineSpeed", "manifoldPressure", "meterFlow", "meterVoltage"] as const) {
    const reading = readings.get(key);
    if (reading !== undefined && reading.mean > 0) worst = Math.max(worst, Math.sqrt(reading.variance) / reading.mean);
  }
  return worst;
}

/** Keeps the smoothest few of each region, in the order of time. */
function thin(candidates: readonly Candidate[]): Candidate[] {
  const perRegion = new Map<string, Candidate[]>();
  for (const c of candidates) {
    const list = perRegion.get(c.region);
    if (list === undefined) perRegion.set(c.region, [c]);
    else list.push(c);
  }
  for (const [region, list] of perRegion) {
    const steady = list.filter((c) => !c.window.moving).sort(bySmoothness);
    const moving = list.filter((c) => c.window.moving).sort(bySmoothness);
    perRegion.set(region, [...steady, ...moving.slice(0, Math.max(0, MOVING_KEPT - steady.length))]);
  }
  let most = MOST_PER_REGION;
  for (;;) {
    const kept = [...perRegion.values()].flatMap((list) => list.slice(0, most));
    if (kept.length <= MOST_POINTS || most === 1) {
      return kept.sort((a, b) => a.window.start - b.window.start).slice(0, MOST_POINTS);
    }
    most -= 1;
  }
}

const bySmoothness = (a: Candidate, b: Candidate) => a.roughness - b.roughness;

/** Pa; a manifold still emptying or filling is no barometer */
const STANDING_RANGE = 2500;

/** Passages with the engine standing: their ends are left out, where the engine was still, or already, turning. */
function keyOnReadings(
  best: ReadonlyMap<ReadingKey, RecognisedChannel>,
  states: readonly StateSpan[],
  recording: number,
): KeyOnReading[] {
  const out: KeyOnReading[] = [];
  for (const span of states) {
    if (span.state !== "key-on") continue;
    const margin = Math.max(0.5, best.get("manifoldPressure")?.pollInterval ?? 0);
    const start = span.start === 0 ? 0 : span.start + margin;
    const end = span.end - margin;
    if (end <= start) continue;
    const readings = readingsDuring(best, { start, end });
    const pressure = readings.get("manifoldPressure");
    if (pressure !== undefined && pressure.high - pressure.low > STANDING_RANGE) continue;
    out.push({ recording, start, end, readings });
  }
  return out;
}
