/** What the driver asks of the engine. */
import { quantile } from "../held-track.ts";
import type { Tracks } from "./tracks.ts";

export type Driver = {
  /** 0 released, 1 fully open, over the travel seen */
  readonly opening: Float64Array;
  /** the travel seen is most of what there is, so that "fully open" means something */
  readonly wholeTravel: boolean;
  readonly what: string;
};

/** What the driver asks: the pedal, else a throttle that is nearly shut at rest (on a diesel it stands open). */
export function driverTrack({ of, name, running }: Tracks): Driver | null {
  for (const quantity of ["pedalPosition", "throttlePosition", "throttleRelative"] as const) {
    const track = of(quantity);
    if (track === null) continue;
    const whileRunning = track.filter((_, i) => running(i));
    const rest = quantile(whileRunning, 0.01);
    const most = quantile(whileRunning, 0.999);
    if (!(rest < 0.45) || Number.isNaN(most)) continue;
    const travel = Math.max(most - rest, 0.25);
    return {
      opening: track.map((value) => (value - rest) / travel),
      wholeTravel: most - rest > 0.5,
      what: name(quantity),
    };
  }
  return null;
}
