/**
 * What is known beside the recordings: results of workshop checks, as ln of their likelihood under any explanation.
 * The weighing multiplies it in at every size, so that a result entered counts exactly as more data would.
 */

/** A fault with a definite size (SI); none: healthy. */
export type DefiniteFault = { readonly cause: string; readonly bank: 1 | 2 | null; readonly size: number };

/** ln P(results | these faults together; or something outside the catalogue), up to one constant, and never above zero. */
export type Known = (faults: readonly DefiniteFault[] | "unexplained") => number;

export const NOTHING_KNOWN: Known = () => 0;
