/**
 * The collected check values: one file a topic in published/data, each record with inputs, expected value, tolerance, source and
 * provenance. Here they are only read; what is compared with what stands in the checks.
 */
import { readFileSync } from "node:fs";

export type Tolerance =
  | { readonly type: "absolute" | "relative"; readonly value: number | { readonly [part: string]: number } }
  | { readonly type: "exact" | "range" | "rule-of-thumb" };

export type CheckRecord = {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: { readonly [name: string]: unknown };
  readonly expected: unknown;
  readonly unit: string;
  readonly tolerance: Tolerance;
  readonly source: string;
  readonly provenance: string;
};

export type Topic =
  | "01-moist-air"
  | "02-compressible-restriction"
  | "03-orifice-and-nozzle"
  | "04-vortex"
  | "05-hot-wire"
  | "06-speed-density"
  | "07-stoichiometry"
  | "08-obd-and-bus"
  | "09-injector-and-fuel"
  | "10-statistics-and-reconciliation"
  | "11-gas-dynamics"
  | "12-trade-facts";

const cache = new Map<Topic, readonly CheckRecord[]>();

export function recordsOf(topic: Topic): readonly CheckRecord[] {
  let records = cache.get(topic);
  if (records === undefined) {
    const file = new URL(`./data/${topic}.json`, import.meta.url);
    records = (JSON.parse(readFileSync(file, "utf8")) as { records: CheckRecord[] }).records;
    cache.set(topic, records);
  }
  return records;
}

/** Records whose id begins with `prefix`; there must be some, so that a renamed id cannot empty a check. */
export function recordsNamed(topic: Topic, prefix: string): readonly CheckRecord[] {
  const found = recordsOf(topic).filter((record) => record.id.startsWith(prefix));
  if (found.length === 0) throw new Error(`No record of ${topic} begins with ${prefix}`);
  return found;
}

export function record(topic: Topic, id: string): CheckRecord {
  const found = recordsOf(topic).find((r) => r.id === id);
  if (found === undefined) throw new Error(`No record ${id} in ${topic}`);
  return found;
}

/** A number among the inputs. */
export function input(from: CheckRecord, name: string): number {
  const value = from.inputs[name];
  if (typeof value !== "number") throw new Error(`Record ${from.id} has no number ${name}`);
  return value;
}

/** The expected number, or the named part of it. */
export function expected(from: CheckRecord, part?: string): number {
  const value = part === undefined ? from.expected : (from.expected as { [name: string]: unknown })[part];
  if (typeof value !== "number") throw new Error(`Record ${from.id} expects no number ${part ?? ""}`);
  return value;
}
