/**
 * Likelihood of a check told in words.
 *
 * Equation    one fault: P(o) = (1 - v) d(o) + v r(o),  v = a^2/(a^2 + half^2)
 *             together:  P(nothing) = d(nothing) prod_f P_f(nothing)/d(nothing), the others share the rest in proportion to
 *             1 - (1 - d(o)) prod_f (1 - P_f(o))/(1 - d(o)): each is seen if either fault, or chance, would show it
 * Symbols     d shares of the default row | r shares of the cause's row | a amount of the size (of a factor, its logarithm's)
 * Numerics    foreseen of two faults together, their mean shares over sizes stand for the sizes
 * Limits      a fault without a row changes nothing, alone or beside another; a size of nothing is the default
 */
import { CATALOGUE } from "../catalogue.ts";
import type { DefiniteFault } from "../known.ts";
import { reported } from "../size-scale.ts";
import type { SizedFault } from "./alternatives.ts";
import type { ShareRow, WordsCheck } from "./check-entry.ts";
import type { CheckLaw } from "./check-law.ts";
import { ANYTHING } from "./check-table.ts";

type Row = { readonly shares: readonly number[]; readonly visible: (size: number) => number };

export function wordsLaw(check: WordsCheck): CheckLaw {
  const none = check.default.shares;
  const rows = new Map(check.rows.flatMap((row) => row.causes.map((cause) => [cause, rowOf(row, cause)] as const)));
  const anything = Float64Array.from(none, (p) => (1 - ANYTHING) * p + ANYTHING / none.length);
  const shown = (faults: readonly SizedFault[]) =>
    Float64Array.from(
      together(
        none,
        faults.flatMap(({ cause, nodes }) => {
          const row = rows.get(cause);
          return row === undefined ? [] : [seen(none, row, nodes)];
        }),
      ),
    );
  return {
    touches: (cause) => rows.has(cause),
    foresee: (faults) => (faults === "unexplained" ? anything : shown(faults)),
    likelihood: ({ outcome }, faults) => {
      const o = check.outcomes.findIndex(({ id }) => id === outcome);
      if (faults === "unexplained") return anything[o]!;
      const [only] = faults;
      const row = only === undefined ? undefined : rows.get(only.cause);
      if (faults.length === 1) return row === undefined ? none[o]! : share(none, row, row.visible(only!.size), o);
      return shown(faults.map(definite))[o]!;
    },
  };
}

/** Linear in what the size makes visible, so that the mean over sizes is that of the mean visibility. */
function seen(none: readonly number[], row: Row, nodes: SizedFault["nodes"]): readonly number[] {
  let visible = 0;
  let total = 0;
  for (const { size, weight } of nodes) {
    visible += weight * row.visible(size);
    total += weight;
  }
  return none.map((_, o) => share(none, row, visible / total, o));
}

function share(none: readonly number[], { shares }: Row, visible: number, o: number): number {
  return (1 - visible) * none[o]! + visible * shares[o]!;
}

function definite({ cause, bank, size }: DefiniteFault): SizedFault {
  return { cause, bank, nodes: [{ size, weight: 1 }] };
}

function together(none: readonly number[], each: readonly (readonly number[])[]): readonly number[] {
  if (each.length < 2) return each[0] ?? none;
  // A fault may not make "nothing shown" likelier than it is without it once another would show.
  const nothing = each.reduce((p, shares) => p * Math.min(1, shares[0]! / none[0]!), none[0]!);
  const seen = none.map((d, o) => (o === 0 ? 0 : 1 - each.reduce((p, s) => (p * (1 - s[o]!)) / (1 - d), 1 - d)));
  const sum = seen.reduce((total, p) => total + Math.max(p, LEAST), 0) - LEAST;
  return none.map((_, o) => (o === 0 ? nothing : ((1 - nothing) * Math.max(seen[o]!, LEAST)) / sum));
}

/** Nothing is impossible. */
const LEAST = 1e-6;

function rowOf({ shares, half }: ShareRow, cause: string): Row {
  const entry = CATALOGUE.find((c) => c.id === cause);
  if (half === undefined || entry === undefined) return { shares, visible: () => 1 };
  const ratio = entry.kind === "ratio";
  const middle = ratio ? Math.log1p(half) : half;
  return {
    shares,
    visible: (size) => {
      const amount = ratio ? Math.log(size) : reported(entry, size);
      return amount ** 2 / (amount ** 2 + middle ** 2);
    },
  };
}
