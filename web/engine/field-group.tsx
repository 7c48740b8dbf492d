/** One numbered section of the form: the lines that matter most, and the others folded. */
import type { ReactNode } from "react";
import type { EngineForm } from "./engine-text.ts";
import { Field } from "./field.tsx";
import type { EngineField, FieldGroup } from "./field-kinds.ts";

type Props = {
  readonly group: FieldGroup;
  readonly number: number;
  readonly form: EngineForm;
  /** a run was tried: what is missing is then said too */
  readonly tried: boolean;
  readonly onChange: (form: EngineForm) => void;
  readonly children?: ReactNode;
};

export function FieldGroupPart({ group, number, form, tried, onChange, children }: Props) {
  const draw = (field: EngineField) => (
    <Field
      key={field.path}
      field={field}
      value={form.values[field.path] ?? ""}
      tried={tried}
      onChange={(value) => onChange({ ...form, values: { ...form.values, [field.path]: value } })}
    />
  );
  const filled = group.more.filter((field) => (form.values[field.path] ?? "") !== "").length;
  return (
    <section className="part" aria-labelledby={`part-${group.id}`}>
      <span className="part-number" aria-hidden="true">
        {number}
      </span>
      <div className="part-body">
        <h2 id={`part-${group.id}`}>{group.title}</h2>
        {children}
        <div className="fields">{group.fields.map(draw)}</div>
        <details className="more">
          <summary>More, if you know it{filled > 0 && ` (${filled} of ${group.more.length} filled in)`}</summary>
          <div className="fields">{group.more.map(draw)}</div>
        </details>
      </div>
    </section>
  );
}
