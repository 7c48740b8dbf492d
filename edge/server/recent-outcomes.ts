/** The latest outcomes by id, so that a report can be fetched without sending the outcome back. */
import type { Outcome } from "../../src/job/result.ts";

const KEPT = 20;

export type RecentOutcomes = {
  readonly keep: (outcome: Outcome) => string;
  readonly find: (id: string) => Outcome | undefined;
};

export function recentOutcomes(): RecentOutcomes {
  const kept = new Map<string, Outcome>();
  let count = 0;
  return {
    keep(outcome) {
      count += 1;
      const id = String(count);
      kept.set(id, outcome);
      kept.delete(String(count - KEPT));
      return id;
    },
    find: (id) => kept.get(id),
  };
}
