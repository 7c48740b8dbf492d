/** What stands in the way of a run, each line leading to its place in the form. */
import type { RefObject } from "react";

type Props = {
  readonly problems: readonly { readonly path: string; readonly label: string; readonly problem: string }[];
  readonly reference: RefObject<HTMLElement | null>;
};

export function ProblemList({ problems, reference }: Props) {
  return (
    <section className="failure" role="alert" tabIndex={-1} ref={reference} aria-label="Not run yet">
      <p className="failure-message">
        {problems.length === 1
          ? "One line needs a look before this can run."
          : `${problems.length} lines need a look before this can run.`}
      </p>
      <ul>
        {problems.map((p) => (
          <li key={p.path}>
            <a href={`#field-${p.path}`} onClick={() => unfold(p.path)}>
              {p.label}
            </a>
            : {p.problem}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A line may be folded away; a link to it opens the fold. */
function unfold(path: string): void {
  document.getElementById(`field-${path}`)?.closest("details")?.setAttribute("open", "");
}
