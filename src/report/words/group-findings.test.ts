import { describe, expect, it } from "vitest";
import { DIESEL } from "../fixtures/diesel.ts";
import { EMPTY_RESULT, finding } from "../fixtures/shared.ts";
import { groupFindings } from "./group-findings.ts";

describe("groupFindings", () => {
  it("tells causes that cannot be told apart as one row, with the chance of the group counted once", () => {
    const [first, second] = groupFindings(DIESEL.result);
    expect(first?.kind).toBe("group");
    expect(first?.kind === "group" && first.members.map((f) => f.cause)).toEqual([
      "egr-stuck-open",
      "meter-scaled",
      "meter-fouled",
    ]);
    expect(first?.probability).toBeCloseTo(0.45 + 0.19 + 0.14 + 0.01, 12);
    expect(second?.kind).toBe("single");
  });

  it("tells a cause alone where nothing else of its group is worth telling", () => {
    const result = {
      ...EMPTY_RESULT,
      findings: [finding("meter-scaled", 0.9), finding("fuel-delivery-scaled", 0.001)],
      inseparable: [["meter-scaled", "fuel-delivery-scaled"]],
    };
    expect(groupFindings(result).map((row) => row.kind)).toEqual(["single", "single"]);
  });

  it("never loses or repeats a finding", () => {
    const rows = groupFindings(DIESEL.result);
    const told = rows.flatMap((row) => (row.kind === "single" ? [row.finding] : row.members));
    expect(new Set(told).size).toBe(told.length);
    expect(told.length).toBe(DIESEL.result.findings.length);
  });

  it("gathers causes that rest on nothing here in one row, whatever sizes they have", () => {
    const findings = DIESEL.result.findings.map((f, i) => (i > 1 ? { ...f, restsOn: [], bayesFactor: 1 } : f));
    const rows = groupFindings({ ...DIESEL.result, inseparable: [], findings });
    const unseen = rows.filter((row) => row.kind === "unseen");
    expect(unseen.length).toBe(1);
    expect(unseen[0]?.kind === "unseen" && unseen[0].members.length).toBe(findings.length - 2);
  });

  it("does not call unseen what it ruled out in large sizes: its chance is not what it was", () => {
    const findings = DIESEL.result.findings.map((f, i) => (i > 0 ? { ...f, restsOn: [], bayesFactor: 0.3 } : f));
    const rows = groupFindings({ ...DIESEL.result, inseparable: [], findings });
    expect(rows.filter((row) => row.kind === "unseen")).toEqual([]);
  });
});
