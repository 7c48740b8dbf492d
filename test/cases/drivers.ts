/** What is done with the engine in a case: four ways of recording. Speeds in 1/s. */
import { type Protocol, roadDriving, rpm, type Segment, standardRecording } from "../../src/model-engine/index.ts";
import type { SeededRandom } from "../../src/numerics/index.ts";

type Driver = (random: SeededRandom, largestSpeed: number) => Protocol;

export const DRIVERS: { readonly [name: string]: Driver } = {
  workshop: (_, largestSpeed) => standardRecording(largestSpeed),
  "workshop and road": (random, largestSpeed) => [
    ...standardRecording(largestSpeed),
    ...roadDriving(random, 240, 0.6 * largestSpeed),
  ],
  town: (random) => town(random),
  hurried: (random, largestSpeed) => [
    { do: "key-on", seconds: 8 },
    { do: "idle", seconds: 25 },
    ...hurried(random, largestSpeed),
    { do: "idle", seconds: 20 },
    { do: "key-on", seconds: 8 },
  ],
};

/** Lights and side streets: stops, low speeds, light loads, no full load at all. */
function town(random: SeededRandom): Protocol {
  const segments: Segment[] = [
    { do: "key-on", seconds: 8 },
    { do: "idle", seconds: 40 },
  ];
  for (let i = 0; i < 14; i++) {
    const speed = rpm(1200 + 1300 * random.uniform());
    segments.push({ do: "drive", seconds: 6 + 8 * random.uniform(), speed, load: 0.3 + 0.35 * random.uniform() });
    if (random.uniform() < 0.5) segments.push({ do: "overrun", seconds: 4, from: speed, to: rpm(1200) });
    if (random.uniform() < 0.6) segments.push({ do: "idle", seconds: 8 + 15 * random.uniform() });
  }
  return [...segments, { do: "key-on", seconds: 8 }];
}

/** Short stretches, wide open more often than not, high speeds. */
function hurried(random: SeededRandom, largestSpeed: number): Segment[] {
  return Array.from({ length: 16 }, () => {
    const from = largestSpeed * (0.3 + 0.2 * random.uniform());
    const to = largestSpeed * (0.65 + 0.28 * random.uniform());
    const steady = largestSpeed * (0.35 + 0.35 * random.uniform());
    const drive: Segment = {
      do: "drive",
      seconds: 4 + 4 * random.uniform(),
      speed: steady,
      load: 0.5 + 0.45 * random.uniform(),
      ramp: 1,
    };
    return [
      { do: "pull", seconds: 4 + 3 * random.uniform(), from, to } as Segment,
      { do: "overrun", seconds: 3, from: to, to: from } as Segment,
      drive,
    ];
  }).flat();
}
