/** Closed loop, open loop and enrichment, from what the engine computer says or its trims and probes show. */
import type { Condition } from "./spans.ts";
import type { Tracks } from "./tracks.ts";

/** Fuel system status, SAE J1979 PID 03: closed loop, with or without a fault. */
const CLOSED = new Set([2, 16]);
const OPEN = new Set([1, 4, 8]);
/** lambda below which the mixture is richer than any closed loop around one keeps it */
const ENRICHED = 0.95;
/** V: a narrow probe stands above the one in a rich mixture, below the other in a lean one. Common practice, no source. */
export const NARROW_PROBE = { rich: 0.6, lean: 0.3 } as const;
/** s, readings farther apart than this miss the switching, which takes a second or two */
const SEEN_SWITCHING = 1;
/** s, how long a trim or a switching probe may stand still in closed loop */
const STILL = 6;

/** `fullLoad` tells where the driver asks for everything: no engine computer is in closed loop there and says nothing of it. */
export function mixtureConditions(tracks: Tracks, times: Float64Array, fullLoad: (i: number) => boolean): Condition[] {
  const enriched = enrichment(tracks);
  const open = (i: number) => fullLoad(i) || enriched.some((condition) => condition.holds(i));
  return [...loopConditions(tracks, times, open), ...enriched];
}

/** `open`: where the loop can't be closed, however lately its trim or probe moved. */
function loopConditions({ of, name, running }: Tracks, times: Float64Array, open: (i: number) => boolean): Condition[] {
  const status = of("loopState");
  if (status !== null) {
    const reason = (what: string) => `${name("loopState")} says ${what}`;
    return [
      { state: "closed-loop", reason: reason("closed loop"), holds: (i) => running(i) && CLOSED.has(status[i]!) },
      { state: "open-loop", reason: reason("open loop"), holds: (i) => running(i) && OPEN.has(status[i]!) },
    ];
  }
  const trim = of("shortTrim");
  if (trim !== null) {
    const alive = movedWithin(times, trim, 0);
    return [
      {
        state: "closed-loop",
        reason: `${name("shortTrim")} is at work`,
        holds: (i) => running(i) && alive[i] === 1 && !open(i),
      },
    ];
  }
  const probe = of("probeVoltage");
  if (probe === null || medianInterval(times) > SEEN_SWITCHING) return [];
  const sides = probe.map((volts) => (volts > NARROW_PROBE.rich ? 1 : volts < NARROW_PROBE.lean ? 0 : Number.NaN));
  const alive = movedWithin(times, sides, 0.5);
  return [
    {
      state: "closed-loop",
      reason: `${name("probeVoltage")} switches`,
      holds: (i) => running(i) && alive[i] === 1 && !open(i),
    },
  ];
}

function medianInterval(times: Float64Array): number {
  const steps = times
    .slice(1)
    .map((time, i) => time - times[i]!)
    .sort();
  return steps[steps.length >> 1] ?? Number.POSITIVE_INFINITY;
}

/** 1 where the value moved by more than `least` within STILL seconds before or after. */
function movedWithin(times: Float64Array, track: Float64Array, least: number): Uint8Array {
  const alive = new Uint8Array(times.length);
  let anchor = track[0] ?? Number.NaN;
  let last = Number.NEGATIVE_INFINITY;
  const moves: number[] = [];
  for (let i = 0; i < times.length; i++) {
    const value = track[i]!;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(anchor)) anchor = value;
    if (Math.abs(value - anchor) > least) {
      anchor = value;
      moves.push(times[i]!);
    }
  }
  let m = 0;
  for (let i = 0; i < times.length; i++) {
    while (m < moves.length && moves[m]! <= times[i]!) last = moves[m++]!;
    const next = moves[m] ?? Number.POSITIVE_INFINITY;
    if (times[i]! - last <= STILL || next - times[i]! <= STILL) alive[i] = 1;
  }
  return alive;
}

function enrichment({ of, name, running }: Tracks): Condition[] {
  for (const quantity of ["lambdaCommanded", "equivalenceRatioCommanded", "lambda", "lambdaIndependent"] as const) {
    const track = of(quantity);
    if (track === null) continue;
    const reason = `${name(quantity)} is below ${ENRICHED}`;
    return [
      {
        state: "enrichment",
        reason,
        holds: (i) => running(i) && track[i]! > 0.3 && track[i]! < ENRICHED,
        atLeast: 0.5,
      },
    ];
  }
  return [];
}
