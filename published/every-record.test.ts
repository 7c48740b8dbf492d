/** Every collected record is compared with something, or stands in excused-records.json with the reason why not. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { recordsOf, type Topic } from "./check-records.ts";

const TOPICS = readdirSync(new URL("./data", import.meta.url))
  .filter((name) => /^\d\d-/.test(name))
  .map((name) => name.replace(".json", "") as Topic);

/** String literals of the checks: the beginnings of ids they ask for. */
const asked = new Set(
  readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith(".test.ts") && name !== "every-record.test.ts")
    .flatMap((name) => Array.from(readFileSync(new URL(name, import.meta.url), "utf8").matchAll(/["`]([^"`\n]+)["`]/g)))
    .map(([, literal]) => (literal ?? "").replace(/\$\{.*$/, "")),
);
const isAsked = (id: string): boolean =>
  [...asked].some((prefix) => /[.]|^erf$|^din/.test(prefix) && id.startsWith(prefix));

const excused = JSON.parse(readFileSync(new URL("./excused-records.json", import.meta.url), "utf8")) as {
  records: { [prefix: string]: string };
};

/** Whole ids, or all that begin with a name that ends with a dot. */
const covers = (name: string, id: string): boolean => (name.endsWith(".") ? id.startsWith(name) : id === name);

describe("collected records", () => {
  const ids = TOPICS.flatMap((topic) => recordsOf(topic).map((record) => record.id));
  const reasons = Object.keys(excused.records);

  it("are each compared with something or excused with a reason", () => {
    const left = ids.filter((id) => !isAsked(id) && !reasons.some((name) => covers(name, id)));
    expect(left).toEqual([]);
  });

  it("are excused only where there are such records", () => {
    expect(reasons.filter((name) => !ids.some((id) => covers(name, id)))).toEqual([]);
  });
});
