/**
 * Ranking the next checks: all causes of the table alone and forty pairs, forty sizes each. Goal: under 50 ms. The order is
 * asserted, so a fast wrong one fails.
 */
import type { Alternative, SizedFault } from "../src/findings/checks/alternatives.ts";
import { CHECKS } from "../src/findings/checks/check-table.ts";
import { rankAmong } from "../src/findings/checks/rank-checks.ts";

const ROUNDS = 15;
const GOAL_MS = 50;
const PAIRS = 40;

const names = [...new Set(CHECKS.flatMap((check) => check.rows.flatMap((row) => row.causes)))];
const causes = names.map((cause, k): SizedFault => {
  const nodes = Array.from({ length: 40 }, (_, i) => ({ size: 0.5 + (i + k) / 50, weight: 1 / 40 }));
  return { cause, bank: null, nodes };
});
const pairs = Array.from({ length: PAIRS }, (_, k) => [causes[k % 9]!, causes[9 + (k % 17)]!]);
const explanations = [...causes.map((cause) => [cause]), ...pairs];
const alternatives: Alternative[] = [
  { faults: [], probability: 0.3 },
  { faults: "unexplained", probability: 0.05 },
  ...explanations.map((faults) => ({ faults, probability: 0.65 / explanations.length })),
];
const milliseconds: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  // processor time, so that what else the machine does is left out
  const from = process.cpuUsage();
  const ranked = rankAmong(CHECKS, alternatives);
  milliseconds.push(process.cpuUsage(from).user / 1e3);
  const perMinute = ranked.map((r) => r.informationBits / r.check.minutes);
  if (ranked.length < 20 || perMinute.some((rate, i) => i > 0 && rate > perMinute[i - 1]!))
    throw new Error("Assertion failed: the checks are not in the order of what they tell per minute");
}
const first = milliseconds[0]!;
milliseconds.sort((a, b) => a - b);
process.stdout.write(
  `rank next checks, ${names.length} causes and ${PAIRS} pairs: first ${first.toFixed(0)} ms, median ${milliseconds[ROUNDS >> 1]!.toFixed(0)} ms of processor time (goal ${GOAL_MS} ms)\n`,
);
