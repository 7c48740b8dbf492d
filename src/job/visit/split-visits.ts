/** The operating points of a job by visit, in the order in which the visits are first named. */
import type { OperatingData } from "../../channels/index.ts";
import type { RecordingInput } from "../understand.ts";
import { severalVisits } from "./parse-visit-file.ts";

export type Visit = {
  /** null where the job is one visit */
  readonly name: string | null;
  /** indices of its recordings */
  readonly recordings: readonly number[];
  readonly data: OperatingData;
};

export function splitVisits(recordings: readonly RecordingInput[], data: OperatingData): Visit[] {
  if (!severalVisits(recordings)) return [{ name: null, recordings: recordings.map((_, i) => i), data }];
  const names = [...new Set(recordings.map((r) => r.visit ?? ""))];
  return names.map((name) => {
    const own = recordings.map((_, i) => i).filter((i) => (recordings[i]!.visit ?? "") === name);
    const of = <T extends { readonly recording: number }>(items: readonly T[]) =>
      items.filter((item) => own.includes(item.recording));
    return { name, recordings: own, data: { ...data, points: of(data.points), keyOn: of(data.keyOn) } };
  });
}
