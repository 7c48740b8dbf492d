// Every witness against numbers worked out by hand from the formula in its file.
import { describe, expect, it } from "vitest";
import { denseEvidence } from "../../test/tally/dense-evidence.ts";
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import {
  buildTallyModel,
  defaultAssumptions,
  logEvidence,
  prepare,
  type TallyModel,
  type TallyWitness,
} from "./index.ts";
import { ENGINE, point, type Readings, reading } from "./test-support/invented-points.ts";

const CLOSED = ["warm", "closed-loop"] as const;
const FULL = ["warm", "full-load", "enrichment"] as const;
const CRUISE: Readings = {
  engineSpeed: 50,
  manifoldPressure: 45e3,
  intakeTemperature: 293.15,
  coolantTemperature: 363,
  barometer: 100e3,
  meterFlow: 0.02,
  shortTrim: reading(0.1, 0.01),
  throttlePosition: 0.2,
  pedalPosition: 0.3,
};

function modelOf(points: readonly OperatingPoint[], engine: Partial<EngineDescription> = {}): TallyModel {
  return buildTallyModel({ points, keyOn: [] }, { ...ENGINE, ...engine }, defaultAssumptions());
}

function at(model: TallyModel, i: number, witness: TallyWitness): number | null {
  const j = model.witnesses.indexOf(witness);
  const row = i * model.witnesses.length + j;
  return j >= 0 && model.present[row] === 1 ? model.y[row]! : null;
}

function covariance(model: TallyModel, i: number, a: TallyWitness, b: TallyWitness): number {
  const w = model.witnesses.length;
  return model.errors[(i * w + model.witnesses.indexOf(a)) * w + model.witnesses.indexOf(b)]!;
}

const names = (model: TallyModel) => model.unknowns.map((u) => u.name);
const DRY = Math.log1p(0.008);

describe("the throttle", () => {
  // closed 0.16 (0.20 is the lowest reading, less 0.02, at most 0.16), open 0.85
  const area = (opening: number) => {
    const closed = (7 * Math.PI) / 180;
    const angle = closed + ((opening - 0.16) / (0.85 - 0.16)) * (Math.PI / 2 - closed);
    return 0.85 * (Math.PI / 4) * 0.06 ** 2 * (1 - Math.cos(angle) / Math.cos(closed)) + 1.5e-6;
  };
  const psi = (r: number) => Math.sqrt(7) * r ** (1 / 1.4) * Math.sqrt(1 - r ** (0.4 / 1.4));
  const upstream = 100e3 - 2500; // the only point is the one of largest flow

  it("is the choked orifice of its opening below half of the pressure before it", () => {
    const model = modelOf([point(0, CLOSED, CRUISE)]);
    const flow = (area(0.2) * upstream * 0.684731) / Math.sqrt(287.05 * 293.15);
    expect(at(model, 0, "throttle")).toBeCloseTo(Math.log(flow) - DRY, 4);
    expect(model.physics.throttle!.pressureEffect[0]).toBe(0);
    expect(covariance(model, 0, "throttle", "pressure")).toBeCloseTo(0.5 * 0.002 ** 2, 12); // temperature only
  });

  it("shares the pressure's error through its slope, and leaves where that diverges", () => {
    const near = (pressure: number) => modelOf([point(0, CLOSED, { ...CRUISE, manifoldPressure: pressure })]);
    const r = 0.9;
    const model = near(r * upstream);
    const slope = (Math.log(psi(r + 1e-5)) - Math.log(psi(r - 1e-5))) / (2e-5 / r);
    expect(slope).toBeLessThan(-3);
    expect(model.physics.throttle!.pressureEffect[0]).toBeCloseTo(slope, 4);
    expect(covariance(model, 0, "throttle", "pressure")).toBeCloseTo((slope + 0.5) * 0.002 ** 2, 9);
    expect(covariance(model, 0, "throttle", "throttle")).toBeGreaterThan((slope * 0.01) ** 2);
    expect(near(0.94 * upstream).witnesses).toContain("throttle");
    expect(near(0.96 * upstream).witnesses).not.toContain("throttle");
  });

  it("needs opening and manifold pressure, spark ignition, and with a charger the pressure before it", () => {
    const { throttlePosition: _, ...blind } = CRUISE;
    expect(modelOf([point(0, CLOSED, blind)]).witnesses).not.toContain("throttle");
    const boosted = { induction: "boosted" } as const;
    expect(modelOf([point(0, CLOSED, CRUISE)], boosted).witnesses).not.toContain("throttle");
    const told = { ...CRUISE, boostPressure: 130e3 };
    expect(modelOf([point(0, CLOSED, told)], boosted).physics.throttle!.upstream[0]).toBe(130e3);
    const diesel = { ignition: "compression", fuel: "diesel", metering: "pedal" } as const;
    expect(modelOf([point(0, CLOSED, CRUISE)], diesel).witnesses).not.toContain("throttle");
  });

  it("says little near its stop where an idle valve may pass the air, and is moved by a valve that is recorded", () => {
    const { pedalPosition: _, ...mechanical } = CRUISE;
    const sd = (readings: Readings) =>
      Math.sqrt(covariance(modelOf([point(0, CLOSED, readings)]), 0, "throttle", "throttle"));
    expect(sd(mechanical)).toBeGreaterThan(2 * sd(CRUISE));
    const valve = (idleAir: number) => at(modelOf([point(0, CLOSED, { ...mechanical, idleAir })]), 0, "throttle")!;
    expect(Math.exp(valve(0.6) - valve(0.2))).toBeCloseTo((area(0.2) + 12e-6) / (area(0.2) + 4e-6), 6);
  });

  it("subtracts what the manifold alone takes up, and no level is believed where the bore is not stated", () => {
    const filling = { ...reading(45e3), slope: 20e3 };
    const model = modelOf([point(0, CLOSED, { ...CRUISE, manifoldPressure: filling })]);
    const stored = (20e3 * 3e-3) / (287.05 * 293.15) / 0.02;
    const still = modelOf([point(0, CLOSED, CRUISE)]);
    expect(at(model, 0, "throttle")! - at(still, 0, "throttle")!).toBeCloseTo(Math.log1p(-stored), 6);
    const level = (m: TallyModel) => {
      const column = m.unknowns.find((u) => u.name === "throttle level")!.from;
      return m.basis[m.witnesses.indexOf("throttle") * m.columns + column]!;
    };
    expect(level(still)).toBeCloseTo(0.25, 12);
    expect(level(modelOf([point(0, CLOSED, CRUISE)], { throttleBore: null }))).toBeCloseTo(1, 12);
  });
});

describe("the independent probe", () => {
  it("stands beside the control probe, sharing the meter's and the trim's errors, with one of its own", () => {
    const model = modelOf([point(0, CLOSED, { ...CRUISE, lambdaIndependent: reading(0.98, 0.003) })]);
    expect(at(model, 0, "fuel")).toBeCloseTo(Math.log(0.02) + Math.log(1.1), 12);
    expect(at(model, 0, "exhaust")).toBeCloseTo(Math.log(0.02) + Math.log(1.1) + Math.log(0.98), 12);
    const shared = 0.002 ** 2 + (0.001 / 1.1) ** 2; // meter, trim
    expect(covariance(model, 0, "fuel", "exhaust")).toBeCloseTo(shared, 12);
    expect(covariance(model, 0, "exhaust", "exhaust")).toBeCloseTo(shared + 0.003 ** 2 + 0.006 ** 2, 12);
    expect(covariance(model, 0, "meter", "exhaust")).toBeCloseTo(0.002 ** 2, 12);
    expect(names(model)).toEqual(expect.arrayContaining(["control probe", "independent probe"]));
  });

  it("makes a witness at full load where the command is known, and the control probe is narrow", () => {
    const full = { ...CRUISE, shortTrim: 0, lambdaIndependent: 0.9 };
    expect(modelOf([point(0, FULL, full), point(1, CLOSED, CRUISE)]).witnesses).not.toContain("exhaust");
    const model = modelOf([point(0, FULL, { ...full, lambdaCommanded: 0.88 }), point(1, CLOSED, CRUISE)]);
    expect(at(model, 0, "exhaust")).toBeCloseTo(Math.log(0.02) + Math.log(0.9 / 0.88), 12);
    expect(at(model, 0, "fuel")).toBeNull();
  });

  it("is of the bank it names, and of the mean of both where it names none", () => {
    const banks: Readings = { ...CRUISE, "shortTrim:1": 0.1, "shortTrim:2": -0.05 };
    const two = { banks: 2 } as const;
    const second = modelOf([point(0, CLOSED, { ...banks, "lambdaIndependent:2": 1.02 })], two);
    expect(at(second, 0, "exhaust")).toBeCloseTo(Math.log(0.02 * 0.95 * 1.02), 12);
    const mean = modelOf([point(0, CLOSED, { ...banks, lambdaIndependent: 1.02 })], two);
    expect(at(mean, 0, "exhaust")).toBeCloseTo(Math.log(0.02 * 1.02) + 0.5 * Math.log(1.1 * 0.95), 12);
    expect(covariance(mean, 0, "exhaust", "meter")).toBeCloseTo(0.002 ** 2, 12);
  });

  it("may be a gas analyser", () => {
    const gas = { carbonDioxide: 0.142, carbonMonoxide: 0.006, oxygen: 0.007, hydrocarbons: 80e-6 };
    const model = modelOf([point(0, CLOSED, { ...CRUISE, ...gas })]);
    // Brettschneider with H/C 1.87, O/C 0, K 3.5
    const found = 0.142 + 0.003 + 0.007 + (1.87 / 4) * (3.5 / (3.5 + 0.006 / 0.142)) * 0.148;
    const lambda = found / ((1 + 1.87 / 4) * (0.148 + 6 * 80e-6));
    expect(at(model, 0, "exhaust")! - at(model, 0, "fuel")!).toBeCloseTo(Math.log(lambda), 9);
  });
});

describe("fuel told by the injectors", () => {
  const injectors = {
    flow: 4e-6,
    atPressure: 300e3,
    deadTime: 0.9e-3,
    pressureReference: "manifold",
    pulsesPerCycle: 1,
  } as const;
  const pressureDoses = { metering: "pressure", injectors } as const;
  const { meterFlow: _, ...unmetered } = CRUISE;
  const pulsed = { ...unmetered, pulseWidth: 3.9e-3 };
  // 745 kg/m3, 3 ms open, 4 cylinders, 25 cycles a second; AFR by atoms of petrol
  const fuel = 745 * 4e-6 * 3e-3 * 4 * 25;
  const ratio = (34.56 * (4 + 1.87)) / (12.011 + 1.008 * 1.87);

  it("is a witness of its own where pressure doses, whatever the trims, and needs no table of the engine computer", () => {
    const model = modelOf([point(0, CLOSED, pulsed)], pressureDoses);
    expect(at(model, 0, "fuel")).toBeCloseTo(Math.log(ratio * fuel), 9);
    expect(names(model)).not.toContain("engine computer's table, level");
    expect(names(model)).toEqual(expect.arrayContaining(["injector flow", "alcohol of the fuel"]));
    expect(covariance(model, 0, "fuel", "pressure")).toBe(0);
    expect(names(modelOf([point(0, CLOSED, unmetered)], pressureDoses))).toContain("engine computer's table, level");
  });

  it("follows the pressure across the injector where the regulator stands on ambient", () => {
    const ambient = { ...injectors, pressureReference: "ambient" } as const;
    const model = modelOf([point(0, CLOSED, pulsed)], { ...pressureDoses, injectors: ambient });
    expect(at(model, 0, "fuel")).toBeCloseTo(Math.log(ratio * fuel * Math.sqrt((300 + 100 - 45) / 300)), 9);
  });

  it("is used where nobody knows by what fuel is dosed, and left where a meter does", () => {
    expect(at(modelOf([point(0, CLOSED, pulsed)], { metering: "unknown", injectors }), 0, "fuel")).toBeCloseTo(
      Math.log(ratio * fuel),
      9,
    );
    const metered = modelOf([point(0, CLOSED, { ...pulsed, meterFlow: 0.02 })], { injectors });
    expect(at(metered, 0, "fuel")).toBeCloseTo(Math.log(0.02 * 1.1), 12);
  });

  it("gives way to the engine computer's own air only where the injectors are not stated", () => {
    const model = modelOf([point(0, CLOSED, { ...unmetered, airPerStroke: 2e-4 })], { metering: "pressure" });
    expect(at(model, 0, "fuel")).toBeCloseTo(Math.log(2e-4 * 100 * 1.1), 12);
    expect(names(model)).not.toContain("engine computer's table, level");
  });
});

describe("sensors at their end", () => {
  const bounds = (model: TallyModel) =>
    model.bounds.map(({ point: p, witness, sign, value }) => ({ p, witness: model.witnesses[witness], sign, value }));

  it("bound the air by a trim at its limit, whichever doses", () => {
    const stuck = { ...CRUISE, shortTrim: 0.25 };
    const metered = modelOf([point(0, CLOSED, stuck)]);
    expect(bounds(metered)).toEqual([{ p: 0, witness: "fuel", sign: 1, value: Math.log(0.02) + Math.log(1.25) }]);
    expect(at(metered, 0, "fuel")).toBeNull();
    const { meterFlow: _, ...unmetered } = stuck;
    expect(bounds(modelOf([point(0, CLOSED, unmetered)], { metering: "pressure" }))).toMatchObject([
      { p: 0, witness: "fuel", sign: 1 },
    ]);
    expect(bounds(modelOf([point(0, CLOSED, { ...stuck, lambda: 1.04 })], { lambdaProbe: "wide" }))).toEqual([]);
  });

  it("bound it by a narrow probe that stands lean or rich at full load", () => {
    const full = (volts: number, commanded?: number) =>
      bounds(
        modelOf([
          point(0, FULL, {
            ...CRUISE,
            shortTrim: 0,
            probeVoltage: volts,
            ...(commanded === undefined ? {} : { lambdaCommanded: commanded }),
          }),
          point(1, CLOSED, CRUISE),
        ]),
      );
    expect(full(0.85, 0.88)).toEqual([{ p: 0, witness: "fuel", sign: -1, value: Math.log(0.02) - Math.log(0.88) }]);
    expect(full(0.1, 0.88)).toEqual([{ p: 0, witness: "fuel", sign: 1, value: Math.log(0.02) - Math.log(0.88) }]);
    expect(full(0.1)).toEqual([{ p: 0, witness: "fuel", sign: 1, value: Math.log(0.02) }]);
    expect(full(0.85)).toEqual([]);
    expect(full(0.45, 0.88)).toEqual([]);
  });

  it("bound it by a manifold pressure that stops at 255 kPa, unless it goes beyond", () => {
    const pressed = (pressure: number) => point(0, CLOSED, { ...CRUISE, manifoldPressure: pressure });
    const boosted = { induction: "boosted" } as const;
    const stopped = modelOf([pressed(255e3)], boosted);
    expect(at(stopped, 0, "pressure")).toBeNull();
    expect(bounds(stopped)).toMatchObject([{ witness: "pressure", sign: 1 }]);
    expect(bounds(modelOf([pressed(255e3), { ...pressed(262e3), id: 1 }], boosted))).toEqual([]);
    const sensor = {
      reads: "absolute",
      reference: 5,
      points: [
        [0.5, 20e3],
        [4.5, 115e3],
      ],
    } as const;
    expect(bounds(modelOf([pressed(115e3)], { ...boosted, manifoldSensor: sensor }))).toMatchObject([
      { witness: "pressure", sign: 1 },
    ]);
  });

  it("bound it by a meter at the end of its curve, by whose clipped flow fuel is still dosed", () => {
    const curve = {
      signalUnit: "V",
      flow: "mass",
      at: null,
      points: [
        [1, 0],
        [2, 0.01],
        [4.8, 0.02],
      ],
    } as const;
    const meters = [{ id: "meter", kind: "hot-wire", bore: null, reference: null, bank: null, curve }] as const;
    const model = modelOf([point(0, CLOSED, CRUISE)], { meters });
    expect(bounds(model)).toEqual([{ p: 0, witness: "meter", sign: 1, value: Math.log(0.02) - DRY }]);
    expect(at(model, 0, "fuel")).toBeCloseTo(Math.log(0.02 * 1.1), 12);
    const below = modelOf([point(0, CLOSED, { ...CRUISE, meterFlow: 0.0195 })], { meters });
    expect(bounds(below)).toEqual([]);
  });
});

describe("channels that restate the engine computer's air", () => {
  it("change nothing, whatever doses the fuel", () => {
    const restated = {
      absoluteLoad: 0.4,
      calculatedLoad: 0.5,
      fuelRate: 1e-6,
      fuelMassRate: 1e-3,
      meterFlowSetPoint: 0.02,
    };
    for (const metering of ["meter", "pressure", "both", "unknown"] as const) {
      const plain = modelOf([point(0, CLOSED, CRUISE)], { metering });
      const more = modelOf([point(0, CLOSED, { ...CRUISE, ...restated })], { metering });
      expect(more.witnesses, metering).toEqual(plain.witnesses);
      expect([...more.y]).toEqual([...plain.y]);
      expect([...more.errors]).toEqual([...plain.errors]);
      expect([...more.basis]).toEqual([...plain.basis]);
    }
  });
});

describe("all witnesses together", () => {
  // Source: the dense formula, see likelihood.test.ts.
  it("have the evidence of the dense formula", () => {
    const points = [0, 1, 2, 3, 4].map((n) =>
      point(n, CLOSED, {
        ...CRUISE,
        engineSpeed: 20 + 12 * n,
        manifoldPressure: 32e3 + 11e3 * n,
        meterFlow: 0.005 * 1.8 ** n,
        throttlePosition: 0.16 + 0.03 * n,
        lambdaIndependent: 1 + 0.004 * n,
      }),
    );
    const model = modelOf(points);
    expect(model.witnesses).toEqual(["meter", "pressure", "throttle", "fuel", "exhaust"]);
    const shift = model.y.map((_, row) => 0.02 * Math.sin(row));
    const ones = model.y.map(() => 1);
    const prepared = prepare(model, null);
    const standing = model.standing.map(() => 0);
    const difference = logEvidence(prepared, { witnesses: shift, standing }) - logEvidence(prepared, null);
    const dense =
      denseEvidence(model, shift, ones).value -
      denseEvidence(
        model,
        model.y.map(() => 0),
        ones,
      ).value;
    expect(difference).toBeCloseTo(dense, 5);
  });
});
