/**
 * What belongs to one bank of cylinders: its injectors, its firing, its exhaust and its probe, with tolerances and planted faults.
 *
 * A fault with a `bank` is that bank's alone; one without is of both. Flows (fuel nobody commanded, air let in) are then shared.
 */
import type { EngineParts } from "./engine-parts.ts";
import { type Fault, faultState } from "./fault.ts";

export type BankSide = {
  /** delivered / expected */
  readonly fuelScale: number;
  /** s, true minus assumed */
  readonly deadTimeError: number;
  /** kg/s into this bank */
  readonly fuelUnmetered: number;
  /** kg/s at idle into this bank's exhaust */
  readonly exhaustAir: number;
  /** share of this bank's firings */
  readonly misfire: number;
  /** reading minus truth */
  readonly lambdaBias: number;
};

export function bankSides(parts: EngineParts, planted: readonly Fault[], banks: 1 | 2): readonly BankSide[] {
  const shared = faultState(planted.filter((fault) => fault.bank === undefined));
  return Array.from({ length: banks }, (_, i) => {
    const own = faultState(planted.filter((fault) => fault.bank === i + 1));
    // Two sets of injectors and two probes differ from each other, too.
    const side = banks === 1 ? 0 : i === 0 ? 1 : -1;
    return {
      fuelScale: Math.exp(parts.injectorScale + side * parts.bankInjectorScale) * shared.fuelScale * own.fuelScale,
      deadTimeError: parts.injectorDeadTime + shared.deadTimeError + own.deadTimeError,
      fuelUnmetered: shared.fuelUnmetered / banks + own.fuelUnmetered,
      exhaustAir: shared.exhaustAir / banks + own.exhaustAir,
      misfire: 1 - (1 - shared.misfire) * (1 - own.misfire),
      lambdaBias: parts.lambdaBias + side * parts.bankLambdaBias + shared.lambdaBias + own.lambdaBias,
    };
  });
}
