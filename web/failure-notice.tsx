/** What went wrong, where, and what to do about it. Takes the focus, so that it is read at once. */
import { useEffect, useRef } from "react";
import type { Failure } from "../src/quantities/index.ts";

export function FailureNotice({ failure }: { readonly failure: Failure }) {
  const notice = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new failure takes the focus again
  useEffect(() => {
    notice.current?.focus();
  }, [failure]);
  const { file, line, column } = failure.where ?? {};
  const place = [file, line === undefined ? null : `line ${line}`, column === undefined ? null : `column ${column}`]
    .filter((part) => part !== null && part !== undefined)
    .join(", ");
  return (
    <section className="failure" role="alert" tabIndex={-1} ref={notice} aria-label="Not done">
      <p className="failure-message">{failure.message}</p>
      {place !== "" && <p className="failure-place">{place}</p>}
      <p>{failure.remedy}</p>
    </section>
  );
}
