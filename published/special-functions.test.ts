/** Distribution functions against values computed with 50 digits, published tables, and known identities. */
import { readFileSync } from "node:fs";
import { describe, it } from "vitest";
import type * as gammaModule from "../src/numerics/incomplete-gamma.ts";
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
  erf,
  erfc,
  fisherCdf,
  fisherQuantile,
  logGamma,
  lowerGamma,
  normalCdf,
  normalQuantile,
  studentCdf,
  studentQuantile,
  upperGamma,
} from "../src/numerics/index.ts";
import { type CheckRecord, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "10-statistics-and-reconciliation";

type Reference = readonly [name: string, args: readonly number[], value: string];
const REFERENCES = (
  JSON.parse(readFileSync(new URL("./data/special-functions.json", import.meta.url), "utf8")) as {
    records: Reference[];
  }
).records;

const FUNCTIONS: { readonly [name: string]: (...args: number[]) => number } = {
  chi2cdf: (x, k) => chiSquareCdf(x!, k!),
  chi2sf: (x, k) => chiSquareUpper(x!, k!),
  chi2inv: (p, k) => chiSquareQuantile(p!, k!),
  normcdf: (x) => normalCdf(x!),
  norminv: (p) => normalQuantile(p!),
  tcdf: (t, n) => studentCdf(t!, n!),
  tinv: (p, n) => studentQuantile(p!, n!),
  fcdf: (f, a, b) => fisherCdf(f!, { numerator: a!, denominator: b! }),
  finv: (p, a, b) => fisherQuantile(p!, { numerator: a!, denominator: b! }),
};

describe("special functions", () => {
  it("match fifty-digit references to twelve digits, tails included", () => {
    for (const [name, args, value] of REFERENCES) {
      const f = FUNCTIONS[name];
      if (f === undefined) throw new Error(`No function for ${name}`);
      expectDigits(f(...args), Number(value), 12, `${name}(${args.join(", ")})`);
    }
  });

  it("give the tables of quantiles", () => {
    const table = (prefix: string, quantile: (p: number, row: CheckRecord) => number): void => {
      for (const row of recordsNamed(TOPIC, prefix)) {
        for (const [i, p] of (row.inputs.p as number[]).entries()) {
          expectRecord(quantile(p, row), { ...row, expected: (row.expected as number[])[i] });
        }
      }
    };
    table("t.", (p, row) => studentQuantile(p, input(row, "df")));
    table("chi2.", (p, row) => chiSquareQuantile(p, input(row, "df")));
    table("F.", (p, row) => fisherQuantile(p, { numerator: input(row, "df1"), denominator: input(row, "df2") }));
    for (const row of recordsNamed(TOPIC, "norm.")) expectRecord(normalQuantile(input(row, "p")), row);
  });

  it("give Student's critical values as printed in 40 CFR 1065.602", () => {
    const row = record(TOPIC, "cfr602.ttable");
    const { conf90, conf95 } = row.expected as { conf90: number[]; conf95: number[] };
    for (const [i, df] of (row.inputs.df as number[]).entries()) {
      expectRecord(studentQuantile(0.95, df), { ...row, expected: conf90[i] });
      expectRecord(studentQuantile(0.975, df), { ...row, expected: conf95[i] });
    }
  });

  it("give the error function and its tail", () => {
    const row = record(TOPIC, "erf");
    for (const [i, x] of (row.inputs.x as number[]).entries()) {
      expectRecord(erf(x), { ...row, expected: (row.expected as number[])[i] });
      expectDigits(erfc(x), 2 * normalCdf(-x * Math.SQRT2), 13, `erfc(${x})`);
    }
    expectDigits(erfc(10), 2 * normalCdf(-10 * Math.SQRT2), 12, "erfc(10)");
  });

  it("give factorials and the half-integer value of the gamma function", () => {
    expectDigits(logGamma(11), Math.log(3_628_800), 14);
    expectDigits(logGamma(0.5), Math.log(Math.sqrt(Math.PI)), 14);
    expectDigits(lowerGamma(1, 0.7), -Math.expm1(-0.7), 14);
    expectDigits(upperGamma(1, 40), Math.exp(-40), 13);
  });

  it("fail once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters<typeof gammaModule>(
      "src/numerics/incomplete-gamma.ts",
      "Math.sqrt(a / (2",
      1e-10,
      (module) =>
        expectDigits(
          module.upperGamma(5, 100),
          Number(REFERENCES.find(([name, [x, k]]) => name === "chi2sf" && x === 200 && k === 10)?.[2]),
          12,
        ),
    );
  });
});
