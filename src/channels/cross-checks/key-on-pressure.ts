/** With the key on and the engine off a pressure in the intake equals the barometer. */
import type { Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import { heldAt, quantile } from "../held-track.ts";
import { inUsualUnit } from "../recognition/expectations.ts";

const STANDING = 50 / 60; // 1/s
/** s after the engine stopped until the manifold has filled */
const SETTLED = 2;
/** Pa: two sensors with a resolution of 1 kPa each. Common practice, no source. */
const TOLERANCE = 4e3;
/** Pa, a barometer anywhere on a road */
const PLAUSIBLE = [62e3, 106e3] as const;
const FEWEST = 3;

export function checkKeyOnPressure(set: ChannelSet): Warning[] {
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  if (speed === undefined || pressure === undefined) return [];
  const barometer = bestChannel(set, "barometer");
  const turning = heldAt(speed, pressure.times);
  const around = barometer === undefined ? null : heldAt(barometer, pressure.times);
  let lastTurned = Number.NEGATIVE_INFINITY;
  const resting = pressure.values.map((value, i) => {
    const time = pressure.times[i]!;
    if (!(turning[i]! < STANDING)) lastTurned = time;
    return pressure.quality[i] === 0 && time - lastTurned > SETTLED ? value : Number.NaN;
  });
  const rests = resting.filter((value) => !Number.isNaN(value));
  if (rests.length < FEWEST) return [];
  const rest = quantile(rests, 0.5);
  const name = `"${pressure.source.header}" reads ${inUsualUnit("barometer", rest)} with the engine off`;
  const baro = around === null ? Number.NaN : quantile(around, 0.5);
  if (Math.abs(rest - baro) > TOLERANCE) {
    const text = `${name}, but "${barometer!.source.header}" reads ${inUsualUnit("barometer", baro)}: the two should agree.`;
    return [{ code: "pressure-at-rest", text }];
  }
  if (rest >= PLAUSIBLE[0] && rest <= PLAUSIBLE[1]) return [];
  return [{ code: "pressure-at-rest", text: `${name}, which no barometer does: its unit or the sensor is wrong.` }];
}
