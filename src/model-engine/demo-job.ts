/**
 * The demo job: an invented engine with an invented leak of 5 mm2 behind the throttle, recorded by an invented tester.
 * Its control probe is wide and its number is recorded, so that full load, where the loop is open, has a fuel witness too: there the
 * leak is gone, which parts it from a meter signal that lost a constant amount.
 */

import { seededRandom } from "../numerics/index.ts";
import type { EngineFileObject } from "./engine-file.ts";
import { buildEngine, PETROL_WITH_METER } from "./families.ts";
import type { Fault } from "./fault.ts";
import { ambientAt } from "./model-engine.ts";
import { type Protocol, roadDriving, rpm } from "./protocol.ts";
import type { Recorder } from "./recorder.ts";
import { simulateRecording } from "./simulate-recording.ts";
import { standardTester } from "./standard-recorders.ts";

export const DEMO_SEED = 14;
export const DEMO_FAULTS: readonly Fault[] = [{ cause: "manifold-leak", size: 5 }];
export const DEMO_ENGINE = buildEngine({ ...PETROL_WITH_METER, lambdaProbe: "wide" }, DEMO_SEED);

export type DemoJob = {
  readonly title: string;
  readonly complaint: string;
  readonly note: string;
  readonly recording: { readonly name: string; readonly text: string };
  readonly engineFile: EngineFileObject;
};

export function demoJob(): DemoJob {
  const { recording, engine } = simulateRecording({
    engine: DEMO_ENGINE,
    protocol: demoProtocol(),
    faults: DEMO_FAULTS,
    ambient: ambientAt({ altitude: 200, temperature: 289, relativeHumidity: 0.6 }),
    recorder: demoTester(),
    seed: DEMO_SEED,
    name: "demo-saloon.csv",
  });
  return {
    title: "2.0 L petrol saloon, lean at idle",
    complaint:
      "Hunts and sometimes stalls at idle when warm, smooth at speed. The engine computer has stored a code for mixture too lean. The air meter was cleaned without effect.",
    note: "Demo: an invented engine with an invented fault; the recording was computed, not measured.",
    recording,
    engineFile: engine,
  };
}

function demoTester(): Recorder {
  const tester = standardTester("petrol-with-meter", ["Invented recording made by the model engine of Airtally"]);
  return { ...tester, channels: tester.channels.map((id) => (id === "probeVoltage" ? "lambda" : id)) };
}

/** Eight minutes: key on, idle, loads, 2,500 rev/min, wide open at low speed, one full-load pull, overrun, road driving. */
function demoProtocol(): Protocol {
  return [
    { do: "key-on", seconds: 10 },
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
    { do: "pull", seconds: 10, from: rpm(1700), to: rpm(5600) },
    { do: "overrun", seconds: 9, from: rpm(4800), to: rpm(1400) },
    ...roadDriving(seededRandom(DEMO_SEED).fork("road"), 215),
    { do: "idle", seconds: 15 },
    { do: "key-on", seconds: 10 },
  ];
}
