/** Choosing recordings, and a first look into each: how many channels were recognised, or why it cannot be read. */
import { useEffect, useState } from "react";
import type { DescribeAnswer } from "../edge/server/contract.ts";
import { formatDuration } from "../src/report/index.ts";
import * as api from "./api.ts";
import { fileKey } from "./job.ts";

type Props = {
  readonly files: readonly File[];
  readonly limit: number | null;
  readonly problem: string | null;
  readonly onAdd: (files: readonly File[]) => void;
  readonly onRemove: (file: File) => void;
};

type Look = DescribeAnswer["recordings"][number];

export function Recordings({ files, limit, problem, onAdd, onRemove }: Props) {
  const looks = useFirstLooks(files);
  return (
    <>
      <p className="lead">
        Text files of any layout, from any logger: one column a channel, or as your reader writes them. Two or more
        recordings of the same visit make one job.
      </p>
      <p className="drop">
        <label htmlFor="field-recordings">Choose recordings</label>
        <input
          id="field-recordings"
          type="file"
          multiple
          aria-describedby={problem === null ? "drop-help" : "drop-help drop-problem"}
          aria-invalid={problem !== null}
          onChange={(event) => {
            onAdd([...(event.target.files ?? [])]);
            event.target.value = "";
          }}
        />
        <span id="drop-help">
          or drop them anywhere on this page
          {limit !== null && `; up to ${Math.floor(limit / 2 ** 20)} MiB together`}
        </span>
      </p>
      {problem !== null && (
        <p id="drop-problem" className="field-problem">
          {problem}
        </p>
      )}
      <ul className="chosen" aria-label="Chosen recordings">
        {files.map((file) => (
          <li key={fileKey(file)}>
            <span className="file-name">{file.name}</span>
            <FirstLook look={looks.get(fileKey(file))} />
            <button type="button" className="quiet" onClick={() => onRemove(file)}>
              Remove<span className="unseen"> {file.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function FirstLook({ look }: { readonly look: Look | undefined }) {
  if (look === undefined) return <span className="first-look">being read</span>;
  if (!look.ok) {
    return (
      <span className="first-look field-problem">
        {look.message} {look.remedy}
      </span>
    );
  }
  const { channels, duration_s } = look.value;
  const known = channels.filter((c) => c.quantity !== null);
  const names = known.map((c) => c.quantityName).filter((name) => name !== "time");
  return (
    <span className="first-look">
      {formatDuration(duration_s)}, {known.length} of {channels.length} columns recognised
      {names.length > 0 && `: ${names.join("; ")}`}
    </span>
  );
}

/** Each file is described once, when it is first seen. */
function useFirstLooks(files: readonly File[]): ReadonlyMap<string, Look> {
  const [looks, setLooks] = useState<ReadonlyMap<string, Look>>(new Map());
  const unseen = files.filter((file) => !looks.has(fileKey(file)));
  const wanted = unseen.map(fileKey).join("\n");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list of unseen files is what starts a look
  useEffect(() => {
    if (unseen.length === 0) return;
    const abort = new AbortController();
    api.describe(unseen, abort.signal).then((answer) => {
      if (abort.signal.aborted) return;
      setLooks((before) => {
        const after = new Map(before);
        for (const [k, file] of unseen.entries()) {
          const look = answer.ok ? answer.value.recordings[k] : answer;
          if (look !== undefined) after.set(fileKey(file), look);
        }
        return after;
      });
    });
    return () => abort.abort();
  }, [wanted]);
  return looks;
}
