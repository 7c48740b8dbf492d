/**
 * What the engine was doing, told from the channels that were recorded; every span says which of them say so. A state for
 * which nothing was recorded is not claimed. The thresholds are common practice, no source, and stand at the top.
 */
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import { quantile } from "../held-track.ts";
import { type Driver, driverTrack } from "./driver.ts";
import { mixtureConditions } from "./mixture-conditions.ts";
import { type Condition, type Grid, spansOf } from "./spans.ts";
import type { StateSpan } from "./state-span.ts";
import { type Tracks, tracksOf } from "./tracks.ts";

const RPM = 1 / 60;
/** 1/s: slower is standing still; a starter turns an engine at 100 to 300 rev/min */
const STANDING = 50 * RPM;
/** K: below it enrichment for a cold engine is usual; above it a thermostat is about to open */
const COLD_BELOW = 313.15;
const WARM_FROM = 343.15;
/** share of a pedal's or throttle's travel that counts as released, and as fully open */
const RELEASED = 0.03;
const OPEN = 0.85;
const IDLE_AT_MOST = 1400 * RPM;
const ROLLING = 1.5; // m/s
/** overrun: speed over idle speed, and pressure under idle pressure */
const OVERRUN_SPEED = 1.4;
const OVERRUN_PRESSURE = 0.92;
/** without a throttle: no more boost than this over idle, or a cruise control is driving with the pedal released */
const OVERRUN_BOOST = 1.15;
/** Pa: an engine that idles below this is throttled; one without a throttle idles near the barometer, 70 kPa at 3,000 m */
const THROTTLED_BELOW = 65e3;
/** share of the barometer that a throttled engine's manifold reaches at full load only */
const FULL_PRESSURE = 0.93;

export function findStates(set: ChannelSet): StateSpan[] {
  const speed = bestChannel(set, "engineSpeed");
  if (speed === undefined || speed.times.length === 0) return [];
  const tracks = tracksOf(set, speed);
  const grid: Grid = { times: speed.times, stretches: set.stretches, interval: speed.pollInterval };
  const driver = driverTrack(tracks);
  const idle = idleConditions(tracks, driver);
  const fullLoad = fullLoadConditions(tracks, driver);
  const conditions: Condition[] = [
    ...runningConditions(tracks),
    ...warmthConditions(tracks),
    ...idle,
    ...overrunConditions(tracks, driver, idle[0]),
    ...fullLoad,
    ...mixtureConditions(tracks, grid.times, (i) => fullLoad.some((condition) => condition.holds(i))),
  ];
  return conditions.flatMap((condition) => spansOf(grid, condition)).sort((a, b) => a.start - b.start);
}

function runningConditions(tracks: Tracks): Condition[] {
  const { speed, running } = tracks;
  const name = tracks.name("engineSpeed");
  // Between standing and running an engine is being started if it runs next, else it is dying away.
  const starts = new Uint8Array(speed.length);
  let runsNext = false;
  for (let i = speed.length - 1; i >= 0; i--) {
    if (running(i)) runsNext = true;
    else if (speed[i]! < STANDING) runsNext = false;
    else if (runsNext) starts[i] = 1;
  }
  return [
    { state: "key-on", reason: `${name} is zero: engine off, sensors alive`, holds: (i) => speed[i]! < STANDING },
    {
      state: "cranking",
      reason: `${name} is between 50 and 400 rev/min before the engine runs`,
      holds: (i) => starts[i] === 1,
    },
    { state: "running", reason: `${name} is above 400 rev/min`, holds: running },
  ];
}

function warmthConditions({ of, name, running }: Tracks): Condition[] {
  const quantity = of("coolantTemperature") !== null ? "coolantTemperature" : "oilTemperature";
  const track = of(quantity);
  if (track === null) return [];
  const say = (what: string) => `${name(quantity)} is ${what}`;
  return [
    { state: "cold", reason: say("below 40 degC"), holds: (i) => running(i) && track[i]! < COLD_BELOW },
    {
      state: "warm-up",
      reason: say("between 40 and 70 degC"),
      holds: (i) => running(i) && track[i]! >= COLD_BELOW && track[i]! < WARM_FROM,
    },
    { state: "warm", reason: say("at least 70 degC"), holds: (i) => running(i) && track[i]! >= WARM_FROM },
  ];
}

function idleConditions({ speed, running, of, name }: Tracks, driver: Driver | null): Condition[] {
  const state = of("idleState");
  if (state !== null) {
    return [{ state: "idle", reason: `${name("idleState")} says so`, holds: (i) => running(i) && state[i] === 1 }];
  }
  const road = of("vehicleSpeed");
  const standing = (i: number) => road === null || !(road[i]! > ROLLING);
  const said = road === null ? "" : " and the vehicle stands";
  if (driver !== null) {
    return [
      {
        state: "idle",
        reason: `${driver.what} is released${said}`,
        holds: (i) => running(i) && speed[i]! < IDLE_AT_MOST && driver.opening[i]! < RELEASED && standing(i),
        atLeast: 1,
      },
    ];
  }
  // No pedal, no throttle: the lowest speed the engine keeps.
  const lowest = quantile(
    speed.filter((_, i) => running(i)),
    0.05,
  );
  return [
    {
      state: "idle",
      reason: `${name("engineSpeed")} is within a tenth of its lowest${said}`,
      holds: (i) => running(i) && speed[i]! < Math.min(1.1 * lowest, IDLE_AT_MOST) && standing(i),
      atLeast: 2,
    },
  ];
}

function overrunConditions(tracks: Tracks, driver: Driver | null, idle: Condition | undefined): Condition[] {
  const { speed, running, of, name } = tracks;
  const cut = of("fuelCut");
  if (cut !== null)
    return [{ state: "fuel-cut", reason: `${name("fuelCut")} says so`, holds: (i) => running(i) && cut[i] === 1 }];
  for (const quantity of ["pulseWidth", "fuelRate", "fuelMassRate", "fuelPerStroke"] as const) {
    const dose = of(quantity);
    if (dose === null) continue;
    return [
      {
        state: "fuel-cut",
        reason: `${name(quantity)} is zero while the engine turns`,
        holds: (i) => running(i) && dose[i] === 0,
      },
    ];
  }
  if (driver === null || idle === undefined) return [];
  const atIdle = (track: Float64Array) =>
    quantile(
      track.filter((_, i) => idle.holds(i)),
      0.5,
    );
  const idleSpeed = atIdle(speed);
  const pressure = of("manifoldPressure");
  const idlePressure = pressure === null ? Number.NaN : atIdle(pressure);
  const throttled = pressure !== null && idlePressure < THROTTLED_BELOW;
  const highest = (throttled ? OVERRUN_PRESSURE : OVERRUN_BOOST) * idlePressure;
  const low = (i: number) => pressure === null || !(pressure[i]! >= highest);
  const fast = OVERRUN_SPEED * (Number.isNaN(idleSpeed) ? 850 * RPM : idleSpeed);
  const road = of("vehicleSpeed");
  // Just after its start an engine runs fast with the pedal released, and burns fuel.
  const rolling = (i: number) => road === null || road[i]! > ROLLING;
  const below = throttled ? "below its idle value" : "hardly above its idle value";
  const also = pressure === null ? "" : ` and ${name("manifoldPressure")} is ${below}`;
  return [
    {
      state: "fuel-cut",
      reason: `${driver.what} is released well above idle speed${also}`,
      holds: (i) => running(i) && driver.opening[i]! < RELEASED && speed[i]! > fast && low(i) && rolling(i),
    },
  ];
}

function fullLoadConditions({ running, of, name }: Tracks, driver: Driver | null): Condition[] {
  const load = of("calculatedLoad");
  const pressure = of("manifoldPressure");
  const barometer = of("barometer");
  if (driver?.wholeTravel) {
    return [
      {
        state: "full-load",
        reason: `${driver.what} is fully open`,
        holds: (i) => running(i) && driver.opening[i]! > OPEN,
      },
    ];
  }
  if (load !== null && quantile(load, 0.5) < 0.8) {
    return [
      {
        state: "full-load",
        reason: `${name("calculatedLoad")} is at least 95 %`,
        holds: (i) => running(i) && load[i]! >= 0.95,
      },
    ];
  }
  if (pressure !== null && barometer !== null && quantile(pressure, 0.2) < 0.7 * quantile(barometer, 0.5)) {
    const reason = `${name("manifoldPressure")} is near ${name("barometer")}`;
    return [{ state: "full-load", reason, holds: (i) => running(i) && pressure[i]! > FULL_PRESSURE * barometer[i]! }];
  }
  return [];
}
