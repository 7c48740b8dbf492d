/** Throws on a programmer error. Must not be reachable from user data: user data gets a `Failure`. */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Assertion failed: ${message}`);
}
