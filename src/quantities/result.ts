/**
 * An expected failure is a value, not an exception: `reason` is a literal union of the stage, `message` says what is
 * wrong and where, `remedy` what the user can do about it. Exceptions are left to programmer errors (see `assert`).
 */
export type Where = { readonly file?: string; readonly line?: number; readonly column?: number };

export type Failure<Reason extends string = string> = {
  readonly ok: false;
  readonly reason: Reason;
  readonly message: string;
  readonly remedy: string;
  readonly where?: Where;
};

export type Success<Value> = { readonly ok: true; readonly value: Value };

export type Result<Value, Reason extends string = string> = Success<Value> | Failure<Reason>;

export function success<Value>(value: Value): Success<Value> {
  return { ok: true, value };
}

export function failure<Reason extends string>(
  reason: Reason,
  message: string,
  remedy: string,
  where?: Where,
): Failure<Reason> {
  return where === undefined ? { ok: false, reason, message, remedy } : { ok: false, reason, message, remedy, where };
}

/** One line for people: file, line, column, what is wrong, what to do. */
export function describeFailure(f: Failure): string {
  const { file, line, column } = f.where ?? {};
  const place = [
    file,
    line === undefined ? undefined : `line ${line}`,
    column === undefined ? undefined : `column ${column}`,
  ]
    .filter((part) => part !== undefined)
    .join(", ");
  return `${place === "" ? "" : `${place}: `}${f.message} ${f.remedy}`;
}
