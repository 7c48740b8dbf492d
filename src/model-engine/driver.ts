/**
 * What the protocol asks for at a moment: whether the engine is free or held at a speed by the road, and what the foot does.
 */
import type { Protocol, Segment } from "./protocol.ts";

export type Demand = {
  /** off: key on, engine still. free: no load but accessories, speed is its own master. held: the road holds the speed. */
  mode: "off" | "free" | "held";
  /** 1/s: held speed, or the one to be kept when free */
  speed: number;
  /** 0 to 1: share of full load wanted; null = foot off */
  load: number | null;
  accessoryTorque: number;
  segment: number;
};

/** A cursor over the protocol; `at` must not go backwards. */
export function driverOf(protocol: Protocol, idleSpeed: number): { at(time: number, speed: number): Demand } {
  let index = 0;
  let start = 0;
  let startSpeed = 0;
  let startLoad = 0;
  const demand: Demand = { mode: "off", speed: 0, load: null, accessoryTorque: 0, segment: 0 };
  return {
    at(time, speed) {
      while (index < protocol.length - 1 && time >= start + protocol[index]!.seconds) {
        start += protocol[index]!.seconds;
        index++;
        startSpeed = speed;
        startLoad = demand.load ?? 0.25;
      }
      demand.segment = index;
      fill(demand, protocol[index]!, time - start, { startSpeed, startLoad, idleSpeed });
      return demand;
    },
  };
}

function fill(
  out: Demand,
  segment: Segment,
  t: number,
  from: { readonly startSpeed: number; readonly startLoad: number; readonly idleSpeed: number },
): void {
  out.accessoryTorque = 4; // alternator and pumps at rest load [common practice, no source]
  out.load = null;
  out.speed = from.idleSpeed;
  out.mode = "free";
  switch (segment.do) {
    case "key-on":
      out.mode = "off";
      out.speed = 0;
      break;
    case "idle":
      out.accessoryTorque += segment.accessoryTorque ?? 0;
      break;
    case "hold":
      out.speed = from.idleSpeed + (segment.speed - from.idleSpeed) * Math.min(1, t / 1.5);
      break;
    case "snap":
      if (t > 1 && t < 1.5) out.load = 1;
      break;
    case "drive": {
      const share = Math.min(1, t / (segment.ramp ?? 2));
      out.mode = "held";
      out.speed = from.startSpeed + (segment.speed - from.startSpeed) * share;
      out.load = from.startLoad + (segment.load - from.startLoad) * share;
      break;
    }
    case "pull":
    case "overrun": {
      const planned = segment.from + (segment.to - segment.from) * Math.min(1, t / segment.seconds);
      out.mode = "held";
      out.speed = from.startSpeed + (planned - from.startSpeed) * Math.min(1, t / 0.6);
      if (segment.do === "pull") out.load = 1;
      break;
    }
  }
}
