/**
 * How a command ends early: with a message for a person and an exit status. 2: the call is off (a file that is not there
 * included); 3: input that cannot be used.
 */
import { describeFailure, type Failure } from "../../src/quantities/index.ts";

export class CliError extends Error {
  readonly status: 2 | 3;

  constructor(status: 2 | 3, message: string) {
    super(message);
    this.name = "CliError";
    this.status = status;
  }
}

/** A failure of the core as the end of a command; `file` is named where the failure names none. */
export function unusable(failure: Failure, file?: string): CliError {
  const where = file === undefined || failure.where?.file !== undefined ? failure.where : { file, ...failure.where };
  return new CliError(3, describeFailure(where === undefined ? failure : { ...failure, where }));
}
