/** One line of the form: label, input, and under it what is wrong, what it is, or what leaving it empty costs. */
import { useState } from "react";
import type { EngineField } from "./field-kinds.ts";
import { fieldProblem } from "./field-problem.ts";

type Props = {
  readonly field: EngineField;
  readonly value: string;
  readonly tried: boolean;
  readonly onChange: (value: string) => void;
};

export function Field({ field, value, tried, onChange }: Props) {
  const [left, setLeft] = useState(false);
  const id = `field-${field.path}`;
  const problem = fieldProblem(field, value);
  const isMissing = value.trim() === "";
  // A line that is still empty is no mistake until a run was tried.
  const shown = problem !== null && (tried || (left && !isMissing)) ? problem : null;
  const note = [field.help, isMissing && field.cost !== undefined ? `Left empty: ${field.cost}` : undefined]
    .filter((part) => part !== undefined)
    .join(" ");
  const described = [shown === null ? null : `${id}-problem`, note === "" ? null : `${id}-note`].filter(
    (x) => x !== null,
  );
  const shared = {
    id,
    value,
    "aria-invalid": shown !== null,
    "aria-describedby": described.length === 0 ? undefined : described.join(" "),
    "aria-required": field.required === true,
    onBlur: () => setLeft(true),
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
  };
  return (
    <div className={field.kind === "points" ? "field field-tall" : "field"}>
      <label htmlFor={id}>
        {field.label}
        {field.required === true && <span className="needed"> needed</span>}
      </label>
      {field.kind === "choice" && (
        <select {...shared}>
          <option value="">{field.required === true ? "choose" : "not known"}</option>
          {field.options.map((o) => (
            <option key={o.value} value={o.value}>
              {o.label}
            </option>
          ))}
        </select>
      )}
      {field.kind === "points" && <textarea {...shared} rows={5} placeholder={field.example} spellCheck={false} />}
      {(field.kind === "quantity" || field.kind === "number") && (
        <input {...shared} placeholder={field.example} autoComplete="off" spellCheck={false} />
      )}
      {shown !== null && (
        <p id={`${id}-problem`} className="field-problem">
          {shown}
        </p>
      )}
      {note !== "" && (
        <p id={`${id}-note`} className="field-note">
          {note}
        </p>
      )}
    </div>
  );
}
