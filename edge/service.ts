/** What the local app's server does, done by the job room: bytes are unpacked and hashed here, the version is handed in. */
import { createHash } from "node:crypto";
import {
  check,
  demo,
  describe,
  engineTemplate,
  quantityChoices,
  type RecordingInput,
  wholeRecording,
} from "../src/job/index.ts";
import type { Outcome } from "../src/job/result.ts";
import { type Result, success } from "../src/quantities/index.ts";
import type { AppService, UploadedRecording } from "./server/index.ts";
import { unpack } from "./unpack.ts";

export function appService(version: string): AppService {
  const answer = (recordings: readonly RecordingInput[], engine: string, channels: string | null): Result<Outcome> => {
    const checked = check({ recordings, engine, channels, assumptions: null, toolVersion: version, seed: 0 });
    if (!checked.ok) return checked;
    const { result, view } = checked.value;
    return success({ result, view }); // data alone: it is told from thread to thread
  };
  return {
    check: ({ recordings, engineText, channelsText }) => {
      const inputs: RecordingInput[] = [];
      for (const upload of recordings) {
        const input = received(upload);
        if (!input.ok) return input;
        inputs.push(input.value);
      }
      return answer(inputs, engineText, channelsText);
    },
    describe: (upload, channelsText) => {
      const input = received(upload);
      if (!input.ok) return input;
      const described = describe({ recording: input.value, engine: null, channels: channelsText }, version);
      if (!described.ok) return described;
      const { name, rows, duration_s, channels, warnings } = described.value.description;
      return success({ name, rows, duration_s, channels, warnings });
    },
    demo: () => {
      const { title, complaint, note, recording, engine: engineText } = demo();
      const bytes = new TextEncoder().encode(recording.text);
      const outcome = answer([wholeRecording(recording.name, bytes, sha256(bytes))], engineText, null);
      return outcome.ok ? success({ title, complaint, note, engineText, outcome: outcome.value }) : outcome;
    },
    engineTemplate,
    quantities: quantityChoices,
  };
}

/** The digest is that of the bytes as they came, packed or not. */
function received({ name, bytes }: UploadedRecording): Result<RecordingInput> {
  const unpacked = unpack(name, bytes);
  return unpacked.ok ? success(wholeRecording(name, unpacked.value, sha256(bytes))) : unpacked;
}

function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
