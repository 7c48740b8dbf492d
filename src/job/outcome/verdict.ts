/**
 * The word and the sentence a customer reads first.
 *
 * Rule   healthy: at least 80 % healthy. likely: a cause, or a group that this recording cannot tell apart, has at least 80 %.
 *        open: all else.
 *        proven, before all of these: one cause, or healthy, has at least 95 %, and of the workshop checks entered one speaks for it
 *        by a likelihood ratio of at least 10 against everything else, the recordings and the other checks counted.
 *        A second fault beside the likely one is told as likely too where the explanations with it have at least half of its chance.
 *        Sizes and the chances of findings are told beside these sentences, by the page.
 */
import { type FoundResult, spokenFor, type Visibility, type Weighed, type WeighedCause } from "../../findings/index.ts";
import { chanceWords } from "../../quantities/index.ts";
import type { TallyModel } from "../../tally/index.ts";
import type { Answer } from "../result.ts";
import { tellFound } from "./tell-found.ts";
import { partInBrackets, partWords, titleOf, type Way, waysOf, wayWords } from "./ways.ts";
import { capital, listed, lower, WITNESS_NAMES } from "./words.ts";

export const LIKELY = 0.8;
const PROVEN = 0.95;
/** strong evidence [kass1995] begins near here */
const SETTLING_RATIO = 10;
/** share of the leading cause's chance from which a second fault beside it is said to be likely, and possible */
const BESIDE_LIKELY = 0.5;
const BESIDE_POSSIBLE = 0.15;
/** of an open answer: what is named */
const NAMED_FROM = 0.05;
const MOST_NAMED = 3;

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
  const ways = waysOf(weighed, visibility);
  const settled = proven(weighed, ways, model, found);
  if (settled !== null) return settled;
  const leading = leadingGroup(weighed, visibility);
  const together = leading.reduce((sum, cause) => sum + cause.probability, 0);
  if (model.witnesses.length < 2) return oneWitness(model);
  if (weighed.healthy.probability >= LIKELY) return healthy(model);
  if (leading.length === 0 || together < LIKELY) return open(weighed, leading, ways, model);
  return leading.length === 1 ? single(leading[0]!, ways) : group(leading, ways);
}

function proven(
  weighed: Weighed,
  ways: readonly Way[],
  model: TallyModel,
  found: readonly FoundResult[],
): Verdict | null {
  const first = weighed.causes.find((cause) => cause.probability >= PROVEN);
  if (first === undefined && weighed.healthy.probability < PROVEN) return null;
  const [strongest] = spokenFor(first?.cause.id ?? null, weighed, found);
  if (strongest === undefined || strongest.ratio < SETTLING_RATIO) return null;
  const verdict = first === undefined ? healthy(model) : single(first, ways);
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

function single(leading: WeighedCause, ways: readonly Way[]): Verdict {
  const { cause } = leading;
  const { likely, sentences } = secondFault([leading], ways);
  const title = titleOf(cause);
  return {
    answer: "likely",
    leading: [leading],
    headline: likely === null ? `${title}.` : `Two faults at once: ${lower(title)} and ${likely}.`,
    summary: [cause.means, `The place to look: ${cause.part}.`, ...sentences].join(" "),
    meansNot: cause.meansNot,
  };
}

function group(leading: readonly WeighedCause[], ways: readonly Way[]): Verdict {
  const alike = leading.map((c) => c.cause);
  const { likely, sentences } = secondFault(leading, ways);
  return {
    answer: "likely",
    leading,
    headline:
      likely === null ? `${capital(partWords(alike))}.` : `Two faults at once: ${partInBrackets(alike)} and ${likely}.`,
    summary: [
      `This recording cannot tell them apart. No part should be bought on this alone; a check that separates them comes first.`,
      ...sentences,
    ].join(" "),
    meansNot: "It does not say which of them: the recording fits all of them alike.",
  };
}

/** What the explanations name most beside the leading cause or group. */
function secondFault(
  leading: readonly WeighedCause[],
  ways: readonly Way[],
): { readonly likely: string | null; readonly sentences: readonly string[] } {
  const isLeading = (part: Way["parts"][number]) => part.some((cause) => leading.some((c) => c.cause === cause));
  const own = ways.filter(({ parts }) => parts.some(isLeading));
  const all = own.reduce((sum, way) => sum + way.probability, 0);
  const pair = own.find(({ parts }) => parts.length > 1);
  const beside = pair?.parts.find((part) => !isLeading(part));
  if (pair === undefined || beside === undefined || pair.probability < BESIDE_POSSIBLE * all)
    return { likely: null, sentences: [] };
  const likely = pair.probability >= BESIDE_LIKELY * all;
  const means = beside.length === 1 ? ` ${beside[0]!.means}` : "";
  const sentence = likely
    ? `The second fault: ${partWords(beside)}.${means}`
    : `A second fault beside it is possible (${chanceWords(pair.probability)}): ${partWords(beside)}.`;
  return { likely: likely ? partInBrackets(beside) : null, sentences: [sentence] };
}

function healthy(model: TallyModel): Verdict {
  return {
    answer: "healthy",
    leading: [],
    headline: "The witnesses of the air agree.",
    summary: `${capital(witnessWords(model))} tell the same air within what healthy engines differ by, wherever this recording went.`,
    meansNot: "It does not say that nothing is wrong with the engine: only that the air signal is not.",
  };
}

/** `short`: for a headline */
type Candidate = { readonly words: string; readonly short: string; readonly probability: number };

function shortWords({ parts }: Way): string {
  return parts.length > 1 ? "Most probably two faults at once" : `Most probable: ${partWords(parts[0]!)}`;
}

function open(weighed: Weighed, leading: readonly WeighedCause[], ways: readonly Way[], model: TallyModel): Verdict {
  const raised = new Set(weighed.causes.filter((c) => c.probability > 2 * c.prior).map((c) => c.cause));
  const accused: readonly Candidate[] = ways
    .filter(({ parts, probability }) => probability >= NAMED_FROM && parts.some((part) => raised.has(part[0]!)))
    .slice(0, MOST_NAMED)
    .map((way) => ({ words: wayWords(way), short: shortWords(way), probability: way.probability }));
  const strange = { words: "something not in the catalogue", short: "", probability: weighed.unexplained.probability };
  const sound = { words: "a healthy air signal", short: "", probability: weighed.healthy.probability };
  const named = [...accused, ...[strange, sound].filter((c) => c.probability >= NAMED_FROM)].sort(
    (a, b) => b.probability - a.probability,
  );
  const told = named.map(({ words, probability }) => `${words}, ${chanceWords(probability)}`).join("; ");
  return {
    answer: "open",
    leading,
    headline: openHeadline(named[0], accused, strange),
    summary: `${named.length > 1 ? "Still possible" : "Most probable"}: ${told}. The witnesses were ${witnessWords(model)}.`,
    meansNot: "It does not clear what was not visited or not recorded; both are listed below.",
  };
}

function openHeadline(first: Candidate | undefined, accused: readonly Candidate[], strange: Candidate): string {
  if (first === strange) return "What was seen fits no cause in the catalogue.";
  if (first !== undefined && accused.includes(first) && first.probability >= 0.3) return `Not settled. ${first.short}.`;
  return accused.length > 0
    ? "Not settled by this recording."
    : "Nothing stands accused, and not everything could be seen.";
}

function oneWitness(model: TallyModel): Verdict {
  const [only] = model.witnesses;
  return {
    answer: "open",
    leading: [],
    headline: only === undefined ? "No witness of the air was recorded." : "One witness alone cannot be contradicted.",
    summary: `${only === undefined ? "" : `The only witness of the air in this recording is ${WITNESS_NAMES[only]}. `}${addWhich(model)}`,
    meansNot: "It does not say that the engine is healthy, nor that it is not.",
  };
}

/** The channel that would add a second witness soonest. */
export function addWhich(model: TallyModel): string {
  const has = (id: string) => model.witnesses.some((w) => w.startsWith(id));
  if (!has("pressure"))
    return "Record manifold pressure too, with intake air temperature and engine speed: together they are a second witness.";
  if (!has("meter") && model.engine.metering !== "pressure")
    return "Record the air meter's flow too, or its raw signal with its curve in the engine file: it is a second witness.";
  return "Record the short- and long-term fuel trims too with the loop state, or a wide lambda: the fuel side is a second witness.";
}

function witnessWords(model: TallyModel): string {
  return listed(model.witnesses.map((w) => WITNESS_NAMES[w]!));
}
