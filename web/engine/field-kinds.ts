/** The kinds of line in the engine form, and short ways to write one. */
import type { Dimension } from "../../src/quantities/index.ts";

export type FieldKind =
  | { readonly kind: "quantity"; readonly dimension: Dimension; readonly example: string }
  | { readonly kind: "number"; readonly example: string }
  | { readonly kind: "choice"; readonly options: readonly Option[] }
  | { readonly kind: "points"; readonly example: string };

export type Option = { readonly value: string; readonly label: string };

export type EngineField = FieldKind & {
  readonly path: string;
  readonly label: string;
  readonly required?: true;
  readonly help?: string;
  readonly cost?: string;
};

export type FieldGroup = {
  readonly id: string;
  readonly title: string;
  readonly fields: readonly EngineField[];
  /** folded behind "More, if you know it" */
  readonly more: readonly EngineField[];
};

export const option = (value: string, label = value): Option => ({ value, label });
export const quantity = (
  path: string,
  label: string,
  dimension: Dimension,
  example: string,
  rest: Partial<EngineField> = {},
) => ({ kind: "quantity", path, label, dimension, example, ...rest }) as EngineField;
export const number = (path: string, label: string, example: string, rest: Partial<EngineField> = {}) =>
  ({ kind: "number", path, label, example, ...rest }) as EngineField;
export const choice = (path: string, label: string, options: readonly Option[], rest: Partial<EngineField> = {}) =>
  ({ kind: "choice", path, label, options, ...rest }) as EngineField;
