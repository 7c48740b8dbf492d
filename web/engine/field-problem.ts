/** What is wrong with a line of the form, in words, or null. The server judges the whole file; this answers while typing. */
import { parseQuantity } from "../../src/quantities/index.ts";
import { parsePoints } from "./curve-points.ts";
import type { EngineField } from "./field-kinds.ts";

export function fieldProblem(field: EngineField, text: string): string | null {
  const value = text.trim();
  if (value === "") return field.required === true ? "This is needed." : null;
  switch (field.kind) {
    case "quantity": {
      const parsed = parseQuantity(value, field.dimension);
      return parsed.ok ? null : `${parsed.message} ${parsed.remedy}`;
    }
    case "number":
      return Number.isFinite(Number(value)) ? null : `"${value}" is not a number. Write for example ${field.example}.`;
    case "points": {
      const parsed = parsePoints(value);
      return parsed.ok ? null : `${parsed.message} ${parsed.remedy}`;
    }
    case "choice":
      return field.options.some((o) => o.value === value) ? null : `"${value}" is not one of the choices.`;
  }
}
