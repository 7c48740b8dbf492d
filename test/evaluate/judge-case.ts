/** What the inference says of an observed case, beside the truth, in the few numbers that the figures need. */

import {
  CATALOGUE,
  inseparableCauses,
  toldQuantile,
  type Weighed,
  type WeighedCause,
  weighAll,
} from "../../src/findings/index.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import { commonAnswer } from "../../src/job/outcome/air.ts";
import {
  type Assumptions,
  buildTallyModel,
  healthyReference,
  prepare,
  type TallyModel,
  withReferences,
} from "../../src/tally/index.ts";
import type { ObservedCase } from "./observed-case.ts";
import type { TrueFault } from "./true-faults.ts";

export type JudgedCause = {
  readonly id: string;
  readonly bank: 1 | 2 | null;
  readonly probability: number;
  readonly low90: number;
  readonly value: number;
  readonly high90: number;
};

export type JudgedCase = {
  readonly number: number;
  readonly family: string;
  readonly recorder: string;
  readonly faults: readonly TrueFault[];
  /** some planted fault is smaller than what is worth mending: neither answer about it is wrong */
  readonly tooSmall: boolean;
  /** per true fault: this recording can see it (tenfold against healthy expected) */
  readonly seen: readonly boolean[];
  readonly healthy: number;
  readonly unexplained: number;
  readonly witnesses: readonly string[];
  readonly points: number;
  /** at least 0.1 %, and those at work */
  readonly causes: readonly JudgedCause[];
  readonly explanations: readonly { readonly causes: readonly string[]; readonly probability: number }[];
  /** the leading cause and what can't be told from it */
  readonly group: readonly string[];
  readonly groupProbability: number;
  /** of the air: root mean square of ln(said/true), and share of the points within the 90 % interval */
  readonly airError: number;
  readonly airCovered: number;
};

export type Witting = "as it is" | "oracle";

export function judge(one: ObservedCase, assumptions: Assumptions, knows: Witting): JudgedCase {
  const parsed = parseEngineFile(one.engineFile);
  if (!parsed.ok) throw new Error(parsed.message);
  const { engine } = { engine: parsed.value };
  const plain = buildTallyModel({ points: one.points, keyOn: one.keyOn }, engine, assumptions);
  const model = knows === "oracle" ? knowing(plain, one, assumptions) : plain;
  const prepared = prepare(model, null);
  const weighed = weighAll(prepared);
  const { groups, invisible } = inseparableCauses(weighed);
  const visible = weighed.causes.filter((c) => !invisible.includes(c));
  const first = visible[0];
  const group = first === undefined ? [] : (groups.find((g) => g.includes(first)) ?? [first]);
  const air = airOf(one, prepared, weighed);
  const at = (c: WeighedCause) => one.faults.some((f) => isOf(f, c));
  return {
    number: one.number,
    family: one.family,
    recorder: one.recorder,
    faults: one.faults,
    tooSmall: one.faults.some((f) => !isWorthMending(f)),
    seen: one.faults.map((f) => visible.some((c) => isOf(f, c))),
    healthy: weighed.healthy.probability,
    unexplained: weighed.unexplained.probability,
    witnesses: model.witnesses,
    points: model.points.length,
    causes: weighed.causes.filter((c) => c.probability > 1e-3 || at(c)).map(told),
    explanations: weighed.explanations
      .filter((e) => e.probability > 1e-3)
      .map((e) => ({ causes: e.causes.map((c) => c.cause.id), probability: e.probability })),
    group: [...new Set(group.map((c) => c.cause.id))],
    groupProbability: weighed.explanations
      .filter((e) => e.causes.some((c) => group.some((g) => g.cause === c.cause)))
      .reduce((sum, e) => sum + e.probability, 0),
    ...air,
  };
}

const isOf = (fault: TrueFault, { cause }: WeighedCause) => cause.id === fault.cause && cause.bank === fault.bank;

function isWorthMending(fault: TrueFault): boolean {
  const cause = CATALOGUE.find((c) => c.id === fault.cause)!;
  return cause.kind === "ratio"
    ? Math.abs(Math.log(fault.size)) >= Math.log1p(cause.worthMending)
    : Math.abs(fault.size) >= cause.worthMending;
}

/** The same inference, told what this very engine is when healthy: its curve, breathing and constants. */
function knowing(model: TallyModel, { twin }: ObservedCase, assumptions: Assumptions): TallyModel {
  if (twin === null) return model;
  const healthy = prepare(buildTallyModel(twin, model.engine, assumptions), null);
  return withReferences(model, [healthyReference(healthy)], "the-same-engine");
}

function told(weighed: WeighedCause): JudgedCause {
  const { cause, probability } = weighed;
  const at = (p: number) => toldQuantile(weighed, p);
  const [a, b] = [at(0.05), at(0.95)];
  return {
    id: cause.id,
    bank: cause.bank,
    probability,
    low90: Math.min(a, b),
    value: at(0.5),
    high90: Math.max(a, b),
  };
}

function airOf({ logAir }: ObservedCase, prepared: ReturnType<typeof prepare>, weighed: Weighed) {
  const answer = commonAnswer(weighed, prepared);
  let squares = 0;
  let inside = 0;
  let count = 0;
  logAir.forEach((truth, i) => {
    const said = answer.logAir[i]!;
    if (Number.isNaN(said) || !Number.isFinite(truth)) return;
    squares += (said - truth) ** 2;
    if (Math.abs(said - truth) <= 1.645 * answer.sd[i]!) inside += 1;
    count += 1;
  });
  return { airError: Math.sqrt(squares / Math.max(1, count)), airCovered: inside / Math.max(1, count) };
}
