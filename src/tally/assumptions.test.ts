import { expect, it } from "vitest";
import { ASSUMPTION_TABLE, defaultAssumptions, withAssumptions } from "./index.ts";

it("holds every assumption that the tally asks for, each positive and with a reason", () => {
  const asked = [
    "meterScale",
    "meterShape",
    "meterLength",
    "breathingStated",
    "breathingUnknown",
    "breathingMean",
    "breathingShape",
    "breathingLengthSpeed",
    "breathingLengthPressure",
    "residualStrength",
    "residualStrengthSd",
    "motoredBreathing",
    "motoredSlope",
    "motoredScatter",
    "chargeHeating",
    "heatSoak",
    "temperatureUnknown",
    "pressureOffset",
    "barometer",
    "humidity",
    "fuelScale",
    "fuelShape",
    "deadTime",
    "idlePulse",
    "tableScale",
    "tableShape",
    "purge",
    "discrepancyMeter",
    "discrepancyPressure",
    "discrepancyFuel",
    "pointNoise",
    "egrSpark",
    "egrSparkShut",
    "egrDiesel",
    "egrScatter",
    "ductDrop",
    "ductDropSpread",
    "exhaustRise",
    "exhaustTemperature",
    "leakDischarge",
    "controlProbe",
    "independentProbe",
    "injectorFlow",
    "deadTimeStated",
    "alcohol",
    "throttleLevel",
    "throttleUnknown",
    "throttleStop",
    "throttleBypass",
    "throttleShape",
    "throttleLength",
    "throttleRatio",
    "idleValve",
    "discrepancyThrottle",
    "discrepancyExhaust",
    "draught",
    "meterRestVoltage",
    "meterRestRatio",
    "meterRestFlow",
    "temperatureSensor",
    "soakSpread",
  ];
  expect(Object.keys(defaultAssumptions()).sort()).toEqual([...asked].sort());
  for (const row of ASSUMPTION_TABLE) {
    expect(row.value).toBeGreaterThan(0);
    expect(row.reason.length).toBeGreaterThan(12);
  }
});

it("lays a user's numbers over the defaults and refuses unknown names and impossible values", () => {
  const changed = withAssumptions({ note: "tighter", meterScale: 0.01 });
  expect(changed.ok && changed.value.meterScale).toBe(0.01);
  expect(withAssumptions({ meterscale: 0.01 })).toMatchObject({ ok: false, reason: "unknown-assumption" });
  for (const bad of [0, -1, Number.NaN, "0.1", null]) {
    expect(withAssumptions({ meterScale: bad })).toMatchObject({ ok: false, reason: "not-a-positive-number" });
  }
});
