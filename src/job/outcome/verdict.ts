/**
 * The word and the sentence a customer reads first.
 *
 * Rule   healthy: at least 80 % healthy. likely: a cause, or a group that this recording cannot tell apart, has at least 80 %.
 *        open: all else.
 *        proven, before all of these: one cause, or healthy, has at least 95 %, and of the workshop checks entered one speaks for it
 *        by a likelihood ratio of at least 10 against everything else, the recordings and the other checks counted.
 */
import {
  type FoundResult,
  reported,
  sizeQuantile,
  spokenFor,
  type Visibility,
  type Weighed,
  type WeighedCause,
} from "../../findings/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import type { Answer } from "../result.ts";
import { tellFound } from "./tell-found.ts";
import { capital, figure, listed, WITNESS_NAMES } from "./words.ts";

export const LIKELY = 0.8;
const PROVEN = 0.95;
/** strong evidence [kass1995] begins near here */
const SETTLING_RATIO = 10;

export type Verdict = {
  readonly answer: Answer;
  /** the leading cause with all that can't be told from it; empty where healthy leads */
  readonly leading: readonly WeighedCause[];
  readonly headline: string;
  readonly summary: string;
  readonly meansNot: string;
};

export type VerdictInput = {
  readonly weighed: Weighed;
  readonly visibility: Visibility;
  readonly model: TallyModel;
  readonly found: readonly FoundResult[];
};

export function verdictOf({ weighed, visibility, model, found }: VerdictInput): Verdict {
  const settled = proven(weighed, model, found);
  if (settled !== null) return settled;
  const leading = leadingGroup(weighed, visibility);
  const together = leading.reduce((sum, cause) => sum + cause.probability, 0);
  if (model.witnesses.length < 2) return oneWitness(model);
  if (weighed.healthy.probability >= LIKELY) return healthy(model);
  if (leading.length === 0 || together < LIKELY) return open(weighed, leading, model);
  return leading.length === 1 ? single(leading[0]!) : group(leading, together);
}

function proven(weighed: Weighed, model: TallyModel, found: readonly FoundResult[]): Verdict | null {
  const first = weighed.causes.find((cause) => cause.probability >= PROVEN);
  if (first === undefined && weighed.healthy.probability < PROVEN) return null;
  const [strongest] = spokenFor(first?.cause.id ?? null, weighed, found);
  if (strongest === undefined || strongest.ratio < SETTLING_RATIO) return null;
  const verdict = first === undefined ? healthy(model) : single(first);
  return { ...verdict, answer: "proven", summary: `${verdict.summary} ${settledBy(strongest.result)}` };
}

function settledBy(result: FoundResult): string {
  const { title, shown } = tellFound(result);
  return `A workshop check settled it: ${lower(title)} (${shown}).`;
}

/** The most probable visible cause and those that can't be told from it. */
function leadingGroup(weighed: Weighed, visibility: Visibility): WeighedCause[] {
  const first = weighed.causes.find((c) => !visibility.invisible.includes(c));
  if (first === undefined) return [];
  const group = visibility.groups.find((causes) => causes.includes(first)) ?? [first];
  return weighed.causes.filter((c) => group.includes(c) && c.probability > 0.01 * first.probability);
}

function single(cause: WeighedCause): Verdict {
  return {
    answer: "likely",
    leading: [cause],
    headline: `${cause.cause.title}.`,
    summary: `${sizeSentence(cause)} ${cause.cause.means} The place to look: ${cause.cause.part}.`,
    meansNot: cause.cause.meansNot,
  };
}

function group(leading: readonly WeighedCause[], together: number): Verdict {
  const names = leading.map((c) => lower(c.cause.title));
  return {
    answer: "likely",
    leading,
    headline: "One of several causes that this recording cannot tell apart.",
    summary: `Either ${listed(names, "or")}: together ${chance(together)}. ${sizeSentence(leading[0]!)} No part should be bought on this alone; a check that separates them comes first.`,
    meansNot: "It does not say which of them: the recording fits all of them alike.",
  };
}

function healthy(model: TallyModel): Verdict {
  return {
    answer: "healthy",
    leading: [],
    headline: "The witnesses of the air agree.",
    summary: `${capital(listed(model.witnesses.map((w) => WITNESS_NAMES[w]!)))} tell the same air within what healthy engines differ by, wherever this recording went.`,
    meansNot: "It does not say that nothing is wrong with the engine: only that the air signal is not.",
  };
}

function open(weighed: Weighed, leading: readonly WeighedCause[], model: TallyModel): Verdict {
  const candidates: string[] = [`a healthy air signal (${chance(weighed.healthy.probability)})`];
  for (const cause of leading.slice(0, 3))
    if (cause.probability > 2 * cause.prior)
      candidates.push(`${lower(cause.cause.title)} (${chance(cause.probability)})`);
  if (weighed.unexplained.probability > 0.1)
    candidates.push(`something not in the catalogue (${chance(weighed.unexplained.probability)})`);
  const accused = candidates.length > 1;
  return {
    answer: "open",
    leading,
    headline: accused ? "Not settled by this recording." : "Nothing stands accused, and not everything could be seen.",
    summary: `${accused ? "Still possible" : "Most probable"}: ${listed(candidates)}. The witnesses were ${listed(model.witnesses.map((w) => WITNESS_NAMES[w]!))}.`,
    meansNot: "It does not clear what was not visited or not recorded; both are listed below.",
  };
}

function oneWitness(model: TallyModel): Verdict {
  const only = model.witnesses[0];
  return {
    answer: "open",
    leading: [],
    headline: "One witness alone cannot be contradicted.",
    summary: `The only witness of the air in this recording is ${only === undefined ? "none" : WITNESS_NAMES[only]}. ${addWhich(model)}`,
    meansNot: "It does not say that the engine is healthy, nor that it is not.",
  };
}

/** The channel that would add a second witness soonest. */
export function addWhich(model: TallyModel): string {
  const has = (id: string) => model.witnesses.some((w) => w.startsWith(id));
  if (!has("pressure"))
    return "Add manifold pressure, intake air temperature and engine speed to the recording: they are a second witness.";
  if (!has("meter") && model.engine.metering !== "pressure")
    return "Add the air meter's flow, or its raw signal with its curve in the engine file: it is a second witness.";
  return "Add the short- and long-term fuel trims with the loop state, or a wide lambda: the fuel side is a second witness.";
}

function sizeSentence(cause: WeighedCause): string {
  const at = (p: number) => figure(reported(cause.cause, sizeQuantile(cause.nodes, p)));
  const unit = cause.cause.unit === "1" ? "" : ` ${cause.cause.unit}`;
  return `${capital(cause.cause.sizeName)}: ${at(0.5)}${unit} (between ${at(0.05)} and ${at(0.95)}), ${aboutChance(cause.probability)}.`;
}

function aboutChance(probability: number): string {
  const words = chance(probability);
  return /^\d/.test(words) ? `about ${words}` : words;
}

function chance(probability: number): string {
  const n = Math.round(100 * probability);
  return n >= 100 ? "more than 99 in 100" : n <= 0 ? "less than 1 in 100" : `${n} in 100`;
}

function lower(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1);
}
