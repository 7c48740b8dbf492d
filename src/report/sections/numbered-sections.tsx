/** The numbered sections of a page, in their order. */
import { Fragment, type ReactNode } from "react";

export type Section = { readonly id: string; readonly title: string; readonly body: ReactNode };

export function NumberedSections({ sections }: { readonly sections: readonly Section[] }) {
  return (
    <Fragment>
      {sections.map((section, k) => (
        <section key={section.id} className={`part part-${section.id}`} aria-labelledby={`part-${section.id}`}>
          <span className="part-number" aria-hidden="true">
            {k + 1}
          </span>
          <div className="part-body">
            <h2 id={`part-${section.id}`}>{section.title}</h2>
            {section.body}
          </div>
        </section>
      ))}
    </Fragment>
  );
}
