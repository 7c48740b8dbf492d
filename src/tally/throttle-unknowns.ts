/** What is not known of a healthy throttle: the level of its area, where its stop reads, its bypass, its curve. */
import type { ThrottleState } from "./tally-model.ts";
import { single, smoothOver, type Unknown, type UnknownContext } from "./unknown-forms.ts";

export function throttleUnknowns({ engine, a }: UnknownContext, throttle: ThrottleState): Unknown[] {
  const { area, openingEffect, bypass } = throttle;
  const level = engine.throttleBore === null ? a.throttleUnknown : a.throttleLevel;
  const here = (name: string, effect: (i: number) => number) =>
    single(name, (i, w) => (w === "throttle" && area[i]! > 0 ? effect(i) : 0));
  return [
    here("throttle level", () => level),
    here("throttle stop", (i) => -a.throttleStop * openingEffect[i]!),
    here("throttle bypass", (i) => a.throttleBypass * bypass[i]!),
    smoothOver(
      "throttle curve",
      area,
      area,
      { amplitude: a.throttleShape, length: a.throttleLength },
      (w) => w === "throttle",
    ),
  ];
}
