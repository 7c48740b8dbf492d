/**
 * Sensitivity and uncertainty of a flow that several readings tell together: pressure, fuel and exhaust side, throttle.
 *
 * Equation    S_i = d ln m/d ln x_i                                                                             (1)
 *             u(m) propagated by the GUM (numerics/uncertainty-budget.ts)                                        (2)
 * Symbols     m kg/s | x_i readings, by their names
 * Validity    as the law of the flow; m and x_i not zero in (1), where S_i of a zero reading is 0; inputs independent
 * Numerics    (1) by central difference over a millionth of each reading: nine digits where the law is smooth
 * Source      [gum2008] 5.1                                                  Check  other-witnesses.test.ts
 */
import { propagateUncertainty, type UncertaintyBudget } from "../numerics/index.ts";

export type Readings<Name extends string> = { readonly [name in Name]: number };

const STEP = 1e-6;

/** (1) */
export function relativeSensitivities<Name extends string>(
  flow: (readings: Readings<Name>) => number,
  readings: Readings<Name>,
): Readings<Name> {
  const middle = flow(readings);
  const entries = (Object.keys(readings) as Name[]).map((name) => {
    const moved = (factor: number): number => flow({ ...readings, [name]: readings[name] * factor });
    return [name, (moved(1 + STEP) - moved(1 - STEP)) / (2 * STEP * middle)] as const;
  });
  return Object.fromEntries(entries) as Readings<Name>;
}

/** (2): standard uncertainties of the readings by name, none where left out. */
export function readingBudget<Name extends string>(
  flow: (readings: Readings<Name>) => number,
  readings: Readings<Name>,
  uncertainties: Partial<Readings<Name>>,
): UncertaintyBudget {
  const names = Object.keys(readings) as Name[];
  return propagateUncertainty(
    (values) => flow(Object.fromEntries(names.map((name, i) => [name, values[i]])) as Readings<Name>),
    names.map((name) => ({ name, value: readings[name], standardUncertainty: uncertainties[name] ?? 0 })),
  );
}
