/** Critical flow factor of air against values computed from an equation of state of air by the definition of ISO 9300. */
import { describe, it } from "vitest";
import type * as nozzle from "../src/gas/critical-nozzle.ts";
import { chokedFlowFunction, criticalFlowFactor } from "../src/gas/index.ts";
import { input, record, recordsNamed } from "./check-records.ts";
import { expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "03-orifice-and-nozzle";

function check(module: Pick<typeof nozzle, "criticalFlowFactor">): void {
  for (const row of recordsNamed(TOPIC, "cstar.2")) {
    const flow = module.criticalFlowFactor(input(row, "p0_Pa"), input(row, "T0_K"));
    expectRecord(flow.factor, row, { part: "Cstar" });
    expectRecord(flow.throatPressureRatio, row, { part: "p_throat_over_p0" });
  }
}

describe("iso9300", () => {
  it("is met by the expansion of the virial gas", () => check({ criticalFlowFactor }));

  it("tends to the flow function of the perfect gas", () => {
    const row = record(TOPIC, "cstar.perfect");
    expectRecord(chokedFlowFunction(input(row, "gamma")), row);
  });

  it("fails once the heat capacity moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/critical-nozzle.ts", "= 3.5", 0.02, check);
  });
});
