/**
 * The figures of an evaluation. A cause counts as said where it has more than half; a group as right where it holds a planted
 * cause. Each share stands with n and its exact 95 % interval.
 */
import { type Share, shareOf } from "./binomial.ts";
import type { JudgedCase } from "./judge-case.ts";

export const SAID = 0.5;

export type Reliability = { readonly low: number; readonly high: number; readonly said: number; readonly true: Share };

const count = <T>(items: readonly T[], test: (item: T) => boolean) => items.filter(test).length;
const holds = (one: JudgedCase, id: string) => one.faults.some((f) => f.cause === id);
const healthyOnes = (cases: readonly JudgedCase[]) => cases.filter((c) => c.faults.length === 0);

/** Healthy engines of which a cause is said. */
export function falseAlarms(cases: readonly JudgedCase[]): Share {
  const healthy = healthyOnes(cases);
  return shareOf(
    count(healthy, (c) => c.causes.some((cause) => cause.probability > SAID)),
    healthy.length,
  );
}

/** Faulty engines whose leading answer, healthy included, is a planted cause. */
export function firstAnswers(cases: readonly JudgedCase[]): Share {
  return shareOf(count(cases, firstIsRight), cases.length);
}

/** The same, with all that can't be told from the leading cause. */
export function groupAnswers(cases: readonly JudgedCase[]): Share {
  return shareOf(count(cases, groupIsRight), cases.length);
}

export function firstIsRight(one: JudgedCase): boolean {
  const first = one.causes[0];
  if (one.faults.length === 0) return first === undefined || one.healthy > first.probability;
  return first !== undefined && first.probability > one.healthy && holds(one, first.id);
}

export function groupIsRight(one: JudgedCase): boolean {
  if (one.faults.length === 0) return one.healthy > one.groupProbability;
  return one.groupProbability > one.healthy && one.group.some((id) => holds(one, id));
}

/** Mean over cases of the squared distance between said and true over healthy, every explanation and unexplained. */
export function brier(cases: readonly JudgedCase[]): number {
  const score = (one: JudgedCase) => {
    const truth = [...one.faults.map((f) => f.cause)].sort().join("+");
    let sum = (one.healthy - (one.faults.length === 0 ? 1 : 0)) ** 2 + one.unexplained ** 2;
    let named = one.faults.length === 0;
    const byName = new Map<string, number>();
    for (const { causes, probability } of one.explanations) {
      const name = [...causes].sort().join("+");
      byName.set(name, (byName.get(name) ?? 0) + probability);
    }
    for (const [name, probability] of byName) {
      const right = name === truth;
      named ||= right;
      sum += (probability - (right ? 1 : 0)) ** 2;
    }
    return named ? sum : sum + 1;
  };
  return cases.reduce((sum, c) => sum + score(c), 0) / cases.length;
}

const BINS = [0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1];

/** Of everything said with a chance in each bin (healthy and every cause), how much was true. `weight`: of a case, for another mix. */
export function reliability(cases: readonly JudgedCase[]): Reliability[] {
  const said = cases.flatMap((one) => [
    { chance: one.healthy, right: one.faults.length === 0 },
    ...one.causes.map((c) => ({
      chance: c.probability,
      right: one.faults.some((f) => f.cause === c.id && f.bank === c.bank),
    })),
  ]);
  return BINS.slice(1).map((high, i) => {
    const low = BINS[i]!;
    const own = said.filter((s) => s.chance > low && (s.chance <= high || high === 1));
    const mean = own.reduce((sum, s) => sum + s.chance, 0) / Math.max(1, own.length);
    return {
      low,
      high,
      said: mean,
      true: shareOf(
        count(own, (s) => s.right),
        own.length,
      ),
    };
  });
}

/** Planted causes whose size lies in the 90 % interval told for that cause. `least`: only where it was said at least so probable. */
export function coverage(cases: readonly JudgedCase[], id: string | null, least: number): Share {
  const pairs = cases.flatMap((one) =>
    one.faults.flatMap((fault, i) => {
      const told = one.causes.find((c) => c.id === fault.cause && c.bank === fault.bank);
      const counts = told !== undefined && one.seen[i] === true && told.probability >= least;
      return counts && (id === null || id === fault.cause) ? [{ fault, told }] : [];
    }),
  );
  return shareOf(
    count(pairs, ({ fault, told }) => fault.size >= told.low90 && fault.size <= told.high90),
    pairs.length,
  );
}

/** The same for findings said at half or more, true or not: a finding of what is not there is a miss. */
export function coverageOfSaid(cases: readonly JudgedCase[]): Share {
  const said = cases.flatMap((one) => one.causes.filter((c) => c.probability >= SAID).map((c) => ({ one, c })));
  const inside = ({ one, c }: (typeof said)[number]) =>
    one.faults.some((f) => f.cause === c.id && f.bank === c.bank && f.size >= c.low90 && f.size <= c.high90);
  return shareOf(count(said, inside), said.length);
}

/**
 * The smallest size from which on four in five are found (the group holds it and has more than half), from fifths of the planted
 * sizes; null where no fifth reaches it.
 */
export function power(cases: readonly JudgedCase[], id: string): number | null {
  const amount = (size: number) => (isRatio(id) ? Math.abs(Math.log(size)) : Math.abs(size));
  const own = cases
    .filter((c) => c.faults.length === 1 && c.faults[0]!.cause === id)
    .map((c) => ({ size: amount(c.faults[0]!.size), found: groupIsRight(c) && c.groupProbability > SAID }))
    .sort((a, b) => (id === "egr-low-flow" ? b.size - a.size : a.size - b.size));
  const fifth = Math.floor(own.length / 5);
  if (fifth < 4) return null;
  for (let i = 0; i < 5; i++) {
    const later = own.slice(i * fifth);
    if (
      count(later.slice(0, fifth), (c) => c.found) >= 0.8 * fifth &&
      count(later, (c) => c.found) >= 0.8 * later.length
    )
      return later[0]!.size;
  }
  return null;
}

/** Told as a factor; its distance from one is what power means. */
export function isRatio(id: string): boolean {
  return id === "meter-scaled" || id === "fuel-delivery-scaled" || id === "fuel-composition";
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? Number.NaN;
}
