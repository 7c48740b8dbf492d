/**
 * The explanations as they are told: causes that this recording cannot tell apart stand for one another, so that twelve pairs
 * which differ only in that become one ("this, and one of those that look alike").
 *
 * Rule   explanations whose causes fall into the same groups are one way, with the sum of their chances; both causes of one group
 *        are that group; a cause that this recording cannot see adds nothing to what stands beside it
 */
import type { Cause, Visibility, Weighed } from "../../findings/index.ts";
import type { WayView } from "../result.ts";
import { lower } from "./words.ts";

/** Each part: the cause, or those that can't be told apart, most probable first. */
export type Way = { readonly parts: readonly (readonly Cause[])[]; readonly probability: number };

/** A member below this share of its part's most probable one is not named. */
const NAMED_FROM = 0.05;

/** Most probable first. */
export function waysOf({ explanations }: Weighed, { groups, invisible }: Visibility): readonly Way[] {
  const unseen = new Set(invisible.map((c) => c.cause));
  const groupOf = new Map(groups.flatMap((group, n) => group.map((c) => [c.cause, n] as const)));
  const ways = new Map<string, { groups: Map<string, Map<Cause, number>>; probability: number }>();
  for (const { causes, probability } of explanations) {
    const keyed = causes
      .filter(({ cause }) => !unseen.has(cause))
      .map(({ cause }) => [String(groupOf.get(cause) ?? causeKey(cause)), cause] as const);
    if (keyed.length === 0) continue;
    const key = [...new Set(keyed.map(([part]) => part))].sort().join(" ");
    const way = ways.get(key) ?? { groups: new Map(), probability: 0 };
    ways.set(key, way);
    way.probability += probability;
    for (const [part, cause] of keyed) {
      const members = way.groups.get(part) ?? new Map<Cause, number>();
      way.groups.set(part, members.set(cause, (members.get(cause) ?? 0) + probability));
    }
  }
  return [...ways.values()]
    .map((way) => ({ parts: [...way.groups.values()].map(namedMembers), probability: way.probability }))
    .sort((a, b) => b.probability - a.probability);
}

function namedMembers(members: ReadonlyMap<Cause, number>): Cause[] {
  const sorted = [...members].sort((a, b) => b[1] - a[1]);
  return sorted.filter(([, p]) => p >= NAMED_FROM * sorted[0]![1]).map(([cause]) => cause);
}

function causeKey({ id, bank }: Cause): string {
  return `${id}/${bank ?? ""}`;
}

export function wayView({ parts, probability }: Way): WayView {
  return { parts: parts.map((part) => part.map(titleOf)), probability };
}

export function titleOf({ title, bank }: Cause): string {
  return bank === null ? title : `${title}, bank ${bank}`;
}

/** "air enters after the throttle, or the air meter's signal is shifted"; of three and more only the first is named. */
export function partWords(part: readonly Cause[]): string {
  const [first = ""] = part.map((cause) => lower(titleOf(cause)));
  return part.length === 1 ? first : `${first}, or ${alikeWords(part)}`;
}

/** The same inside a longer sentence: what it may be taken for stands in brackets. */
export function partInBrackets(part: readonly Cause[]): string {
  const [first = ""] = part.map((cause) => lower(titleOf(cause)));
  return part.length === 1 ? first : `${first} (or ${alikeWords(part)})`;
}

function alikeWords(part: readonly Cause[]): string {
  return part.length === 2 ? lower(titleOf(part[1]!)) : "something that looks the same";
}

/** "two faults at once, ... and ...", the one that is known best first */
export function wayWords({ parts }: Way): string {
  if (parts.length === 1) return partWords(parts[0]!);
  const sorted = [...parts].sort((a, b) => a.length - b.length);
  return `two faults at once, ${sorted.map(partInBrackets).join(" and ")}`;
}
