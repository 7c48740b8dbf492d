/** A job of the page: what the user brings, and what was answered. */
import type { CheckAnswer, DemoAnswer } from "../edge/server/contract.ts";
import type { CheckParts } from "./api.ts";
import { type Correction, channelListText } from "./channel-list-text.ts";
import { ENGINE_FIELDS } from "./engine/engine-fields.ts";
import { EMPTY_FORM, type EngineForm, engineText } from "./engine/engine-text.ts";
import { fieldProblem } from "./engine/field-problem.ts";

export type Draft = {
  readonly title: string;
  readonly complaint: string;
  readonly recordings: readonly File[];
  readonly engine: EngineForm;
  readonly corrections: readonly Correction[];
};

export type Answered =
  | { readonly kind: "demo"; readonly answer: DemoAnswer }
  | { readonly kind: "own"; readonly answer: CheckAnswer; readonly draft: Draft };

export const EMPTY_DRAFT: Draft = { title: "", complaint: "", recordings: [], engine: EMPTY_FORM, corrections: [] };

/** Adds recordings, each once. */
export function withRecordings(draft: Draft, added: readonly File[]): Draft {
  const known = new Set(draft.recordings.map(fileKey));
  return { ...draft, recordings: [...draft.recordings, ...added.filter((file) => !known.has(fileKey(file)))] };
}

export function fileKey(file: File): string {
  return `${file.name} ${file.size} ${file.lastModified}`;
}

export function partsOf(draft: Draft): CheckParts {
  return {
    recordings: draft.recordings,
    engineText: engineText(draft.engine),
    channelsText: channelListText(draft.corrections),
  };
}

/** Lines of the form that stand in the way, by path; "recordings" for a job without any. */
export function problemsOf(
  draft: Draft,
): readonly { readonly path: string; readonly label: string; readonly problem: string }[] {
  const missing =
    draft.recordings.length === 0
      ? [{ path: "recordings", label: "Recordings", problem: "Choose at least one recording." }]
      : [];
  const fields = ENGINE_FIELDS.flatMap((field) => {
    const problem = fieldProblem(field, draft.engine.values[field.path] ?? "");
    return problem === null ? [] : [{ path: field.path, label: field.label, problem }];
  });
  return [...missing, ...fields];
}
