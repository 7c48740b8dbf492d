/** What the local app's server does, done by the job room: bytes are hashed here, the version is handed in. */
import { createHash } from "node:crypto";
import { check, demo, describe, engineTemplate, quantityChoices } from "../src/job/index.ts";
import { success } from "../src/quantities/index.ts";
import type { AppService, UploadedRecording } from "./server/index.ts";

export function appService(version: string): AppService {
  const hashed = ({ name, bytes }: UploadedRecording) => ({
    name,
    bytes,
    sha256: createHash("sha256").update(bytes).digest("hex"),
  });
  const answer = (recordings: readonly UploadedRecording[], engine: string, channels: string | null) =>
    check({ recordings: recordings.map(hashed), engine, channels, assumptions: null, toolVersion: version, seed: 0 });
  return {
    check: ({ recordings, engineText, channelsText }) => answer(recordings, engineText, channelsText),
    describe: (recording, channelsText) => {
      const described = describe({ recording: hashed(recording), engine: null, channels: channelsText }, version);
      if (!described.ok) return described;
      const { name, rows, duration_s, channels, warnings } = described.value.description;
      return success({ name, rows, duration_s, channels, warnings });
    },
    demo: () => {
      const { title, complaint, note, recording, engineFile } = demo();
      const engineText = `${JSON.stringify(engineFile, null, 2)}\n`;
      const outcome = answer(
        [{ name: recording.name, bytes: new TextEncoder().encode(recording.text) }],
        engineText,
        null,
      );
      return outcome.ok ? success({ title, complaint, note, engineText, outcome: outcome.value }) : outcome;
    },
    engineTemplate,
    quantities: quantityChoices,
  };
}
