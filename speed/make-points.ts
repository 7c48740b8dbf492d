/** Operating points of invented recordings with a planted leak, as many as asked for: several drives of one engine, then copies with noise. */
import { findOperatingPoints, type OperatingData, type OperatingPoint } from "../src/channels/index.ts";
import type { EngineDescription } from "../src/engine/index.ts";
import { parseEngineFile } from "../src/job/engine-file/parse-engine-file.ts";
import { understand } from "../src/job/understand.ts";
import {
  ambientAt,
  buildEngine,
  FAMILY_DESIGNS,
  roadDriving,
  simulateRecording,
  standardRecording,
  standardTester,
} from "../src/model-engine/index.ts";
import { seededRandom } from "../src/numerics/index.ts";

export function pointsOfDrives(count: number): { data: OperatingData; engine: EngineDescription } {
  const design = FAMILY_DESIGNS["petrol-with-meter"];
  const own = buildEngine(design, 11);
  const random = seededRandom(5);
  const points: OperatingPoint[] = [];
  let engine: EngineDescription | null = null;
  let keyOn: OperatingData["keyOn"] = [];
  for (let drive = 0; points.length < count && drive < 8; drive++) {
    const { recording, engine: file } = simulateRecording({
      engine: own,
      protocol: drive === 0 ? standardRecording() : roadDriving(random.fork(`drive ${drive}`), design.largestSpeed),
      faults: [{ cause: "manifold-leak", size: 6 }],
      ambient: ambientAt({ altitude: 200, temperature: 290, relativeHumidity: 0.5 }),
      recorder: standardTester("petrol-with-meter"),
      seed: 100 + drive,
    });
    const parsed = parseEngineFile(JSON.stringify(file));
    if (!parsed.ok) throw new Error(parsed.message);
    engine = parsed.value;
    const understood = understand(
      { name: recording.name, chunks: [new TextEncoder().encode(recording.text)], sha256: () => "" },
      engine,
      null,
    );
    if (!understood.ok) throw new Error(understood.message);
    const found = findOperatingPoints(understood.value.set, understood.value.states, drive, points.length + 1);
    points.push(...found.points);
    keyOn = [...keyOn, ...found.keyOn];
  }
  const first = points.length;
  for (let i = 0; points.length < count; i++) points.push(shaken(points[i % first]!, points.length + 1));
  return { data: { points: points.slice(0, count), keyOn }, engine: engine! };

  function shaken(point: OperatingPoint, id: number): OperatingPoint {
    const readings = new Map(
      [...point.readings].map(([key, r]) => [key, { ...r, mean: r.mean * (1 + 0.003 * random.normal()) }] as const),
    );
    return { ...point, id, readings };
  }
}
