import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { effectiveNeckLength, helmholtzFrequency, quarterWaveFrequency } from "./acoustics.ts";
import { criticalFlowFactor, criticalNozzleFlow } from "./critical-nozzle.ts";
import { type DifferentialPressureDevice, differentialPressureFlow } from "./differential-pressure-device.ts";
import { nozzleExpansibility } from "./flow-nozzle.ts";
import { isentropicAreaRatio, isentropicRatios, machNumberOfPressureRatio } from "./isentropic.ts";
import { orificeFlowFunction } from "./orifice-flow-function.ts";
import { orificeExpansibility, orificePermanentLoss } from "./orifice-plate.ts";
import { incompressibleOrificeFlow, restrictionMassFlow, restrictionPressureDrop } from "./restriction.ts";
import { venturiCriticalRatio, venturiFlowCoefficient } from "./venturi.ts";

const DEVICES: readonly DifferentialPressureDevice[] = [
  { kind: "orifice-plate", taps: "corner", pipeDiameter: 0.1, boreDiameter: 0.06 },
  { kind: "orifice-plate", taps: "flange", pipeDiameter: 0.06, boreDiameter: 0.035 },
  { kind: "orifice-plate", taps: "D and D/2", pipeDiameter: 0.1, boreDiameter: 0.07 },
  { kind: "isa-1932-nozzle", pipeDiameter: 0.1, boreDiameter: 0.05 },
  { kind: "long-radius-nozzle", pipeDiameter: 0.1, boreDiameter: 0.05 },
  { kind: "venturi-nozzle", pipeDiameter: 0.1, boreDiameter: 0.06 },
];
const AIR = { upstreamPressure: 101_325, upstreamDensity: 1.2, viscosity: 1.82e-5, gamma: 1.4 };

describe("differentialPressureFlow", () => {
  it("rises with the pressure drop for every device, from zero", () => {
    for (const device of DEVICES) {
      expect(differentialPressureFlow(device, { ...AIR, pressureDrop: 0 }).massFlow).toBe(0);
      fc.assert(
        fc.property(fc.double({ min: 20, max: 20_000, noNaN: true }), (pressureDrop) => {
          const flow = differentialPressureFlow(device, { ...AIR, pressureDrop }).massFlow;
          expect(
            differentialPressureFlow(device, { ...AIR, pressureDrop: pressureDrop * 1.01 }).massFlow,
          ).toBeGreaterThan(flow);
        }),
        { numRuns: 30 },
      );
    }
  });

  it("names every limit that a reading breaks", () => {
    const small = { kind: "orifice-plate", taps: "corner", pipeDiameter: 0.03, boreDiameter: 0.01 } as const;
    const flow = differentialPressureFlow(small, { ...AIR, pressureDrop: 60_000 });
    expect(flow.outside.join()).toMatch(/pipe.*bore/);
    expect(flow.outside.join()).toMatch(/pressure ratio/);
    const slow = differentialPressureFlow(DEVICES[2]!, { ...AIR, pressureDrop: 0.01 });
    expect(slow.outside.join()).toMatch(/Reynolds number/);
    const steep = { kind: "orifice-plate", taps: "corner", pipeDiameter: 0.1, boreDiameter: 0.08 } as const;
    expect(differentialPressureFlow(steep, { ...AIR, pressureDrop: 1000 }).outside.join()).toMatch(/diameter ratio/);
    const tight = { kind: "long-radius-nozzle", pipeDiameter: 0.1, boreDiameter: 0.01 } as const;
    expect(differentialPressureFlow(tight, { ...AIR, pressureDrop: 1000 }).outside.join()).toMatch(/diameter ratio/);
    expect(differentialPressureFlow(DEVICES[0]!, { ...AIR, pressureDrop: 2000 }).outside).toEqual([]);
    const { uncertainty } = differentialPressureFlow(DEVICES[0]!, { ...AIR, pressureDrop: 2000 });
    expect(uncertainty.dischargeCoefficient).toBeCloseTo(0.0025, 10);
  });

  it("names each limit alone, just beyond it and not just within", () => {
    const plate = (pipeDiameter: number, diameterRatio: number) =>
      differentialPressureFlow(
        { kind: "orifice-plate", pipeDiameter, boreDiameter: pipeDiameter * diameterRatio },
        { ...AIR, pressureDrop: 5000 },
      ).outside.join();
    expect(plate(0.0495, 0.5)).toMatch(/^pipe 49.5 mm[^,]*$/);
    expect(plate(0.0505, 0.5)).toBe("");
    expect(plate(0.06, 0.2)).toMatch(/^bore 12.0 mm[^,]*$/);
    expect(plate(0.063, 0.2)).toBe("");
    expect(plate(0.2, 0.76)).toMatch(/^diameter ratio 0.760[^,]*$/);
    expect(plate(0.2, 0.74)).toBe("");
    const nozzle = (kind: "isa-1932-nozzle" | "long-radius-nozzle", pipeDiameter: number, diameterRatio: number) =>
      differentialPressureFlow(
        { kind, pipeDiameter, boreDiameter: pipeDiameter * diameterRatio },
        { ...AIR, pressureDrop: 20_000 },
      ).outside.join();
    for (const [kind, least, widest] of [
      ["isa-1932-nozzle", 0.3, 0.5],
      ["long-radius-nozzle", 0.2, 0.63],
    ] as const) {
      for (const [pipe, ratio, broken] of [
        [0.2, 0.81, /^diameter ratio[^,]*$/],
        [0.2, least - 0.01, /^diameter ratio[^,]*$/],
        [widest + 0.01, 0.5, /^pipe diameter[^,]*$/],
        [0.049, 0.5, /^pipe diameter[^,]*$/],
        [0.2, 0.79, /^$/],
        [0.2, least + 0.01, /^$/],
        [widest - 0.01, 0.5, /^$/],
        [0.051, 0.5, /^$/],
      ] as const)
        expect(nozzle(kind, pipe, ratio), `${kind} ${pipe} ${ratio}`).toMatch(broken);
    }
  });

  it("names each limit of a Venturi nozzle alone, its bore and Reynolds number with it", () => {
    const nozzle = (pipeDiameter: number, diameterRatio: number, pressureDrop = 20_000) =>
      differentialPressureFlow(
        { kind: "venturi-nozzle", pipeDiameter, boreDiameter: pipeDiameter * diameterRatio },
        { ...AIR, pressureDrop },
      ).outside.join();
    for (const [pipe, ratio, broken, drop] of [
      [0.2, 0.78, /^diameter ratio[^,]*$/],
      [0.2, 0.31, /^diameter ratio[^,]*$/],
      [0.51, 0.5, /^pipe diameter[^,]*$/, 500],
      [0.0648, 0.774, /^pipe diameter[^,]*$/],
      [0.1, 0.49, /^bore in m 0.0490[^,]*$/],
      [0.2, 0.5, /^Reynolds number[^,]*$/, 1100],
      [0.5, 0.7, /^Reynolds number[^,]*$/, 10_000],
      [0.2, 0.77, /^$/],
      [0.2, 0.32, /^$/],
      [0.49, 0.5, /^$/, 500],
      [0.0652, 0.77, /^$/],
      [0.1, 0.51, /^$/],
      [0.2, 0.5, /^$/, 1300],
    ] as const)
      expect(nozzle(pipe, ratio, drop), `${pipe} ${ratio} ${drop}`).toMatch(broken);
  });

  it("states the standards' uncertainties of each coefficient, standard and not at 95 %", () => {
    const stated = (device: DifferentialPressureDevice) =>
      differentialPressureFlow(device, { ...AIR, pressureDrop: 5000 }).uncertainty;
    const at = (kind: DifferentialPressureDevice["kind"], pipeDiameter: number, diameterRatio: number) =>
      stated({ kind, pipeDiameter, boreDiameter: pipeDiameter * diameterRatio });
    const coefficient = (...of: Parameters<typeof at>) => 200 * at(...of).dischargeCoefficient;
    // per cent at 95 %, ISO 5167-2 5.3.3.1 and ISO 5167-3 5.1.7, 5.2.7, 5.3.4 (from memory, as in the code)
    expect(coefficient("orifice-plate", 0.2, 0.15)).toBeCloseTo(0.55, 9);
    expect(coefficient("orifice-plate", 0.2, 0.5)).toBeCloseTo(0.5, 9);
    expect(coefficient("orifice-plate", 0.2, 0.7)).toBeCloseTo(0.6669, 9);
    expect(coefficient("orifice-plate", 0.0508, 0.5)).toBeCloseTo(0.5 + 0.9 * 0.25 * 0.8, 9);
    // half a per cent more at b > 0.5 below Re 10,000
    const slowly = (boreDiameter: number) =>
      200 *
      differentialPressureFlow({ kind: "orifice-plate", pipeDiameter: 0.1, boreDiameter }, { ...AIR, pressureDrop: 2 })
        .uncertainty.dischargeCoefficient;
    expect(slowly(0.052)).toBeCloseTo(1, 9);
    expect(slowly(0.05)).toBeCloseTo(0.5, 9);
    expect(coefficient("isa-1932-nozzle", 0.1, 0.5)).toBeCloseTo(0.8, 9);
    expect(coefficient("isa-1932-nozzle", 0.1, 0.7)).toBeCloseTo(1, 9);
    expect(coefficient("long-radius-nozzle", 0.1, 0.5)).toBeCloseTo(2, 9);
    expect(coefficient("venturi-nozzle", 0.1, 0.6)).toBeCloseTo(1.3944, 9);
    const drop = 5000 / 101_325;
    expect(200 * at("orifice-plate", 0.2, 0.5).expansibility).toBeCloseTo((3.5 * drop) / 1.4, 9);
    expect(200 * at("isa-1932-nozzle", 0.1, 0.5).expansibility).toBeCloseTo(2 * drop, 9);
  });

  it("refuses a bore that leaves no wall", () => {
    const bare = { kind: "orifice-plate", pipeDiameter: 0.1, boreDiameter: 0.1 } as const;
    expect(() => differentialPressureFlow(bare, { ...AIR, pressureDrop: 1000 })).toThrow(/bore/);
  });

  it("does not expand without a drop, and loses less than the drop for good", () => {
    expect(orificeExpansibility(0.6, 1, 1.4)).toBe(1);
    expect(nozzleExpansibility(0.6, 1, 1.4)).toBe(1);
    expect(nozzleExpansibility(0.6, 1 - 1e-9, 1.4)).toBeCloseTo(1, 8);
    expect(orificePermanentLoss(1000, 0.6, 0.6)).toBeGreaterThan(400);
    expect(orificePermanentLoss(1000, 0.6, 0.6)).toBeLessThan(1000);
  });
});

describe("venturi", () => {
  it("without approach velocity is the orifice from rest", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.999, noNaN: true }), (ratio) => {
        const shape = { diameterRatio: 0, gamma: 1.4 };
        expect(venturiFlowCoefficient(ratio, shape)).toBeCloseTo(orificeFlowFunction(ratio), 9);
      }),
    );
  });

  it("flows more with approach velocity, and is continuous through choking", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.85, noNaN: true }),
        fc.double({ min: 1.1, max: 1.66, noNaN: true }),
        (beta, gamma) => {
          const shape = { diameterRatio: beta, gamma };
          const critical = venturiCriticalRatio(shape);
          const choked = venturiFlowCoefficient(critical / 2, shape);
          expect(venturiFlowCoefficient(critical * (1 + 1e-7), shape)).toBeCloseTo(choked, 6);
          expect(choked).toBeGreaterThanOrEqual(orificeFlowFunction(0.1, gamma) - 1e-9);
          // the greatest value of the formula lies at the critical ratio
          expect(venturiFlowCoefficient(critical * 1.02, shape)).toBeLessThan(choked);
        },
      ),
    );
  });
});

describe("critical nozzle", () => {
  it("tends to the perfect gas as the pressure goes to zero", () => {
    expect(criticalFlowFactor(10, 350).factor).toBeCloseTo(0.6847314563772705, 6);
  });

  it("flows in proportion to the inlet pressure and names a Reynolds number outside the standard", () => {
    const nozzle = { throat: "toroidal", throatDiameter: 0.01 } as const;
    const one = criticalNozzleFlow(nozzle, { pressure: 100_000, temperature: 293.15 });
    const two = criticalNozzleFlow(nozzle, { pressure: 200_000, temperature: 293.15 });
    expect(two.massFlow / one.massFlow).toBeCloseTo(2, 1);
    expect(one.outside).toEqual([]);
    const tiny = criticalNozzleFlow(
      { throat: "cylindrical", throatDiameter: 0.001 },
      { pressure: 1e5, temperature: 293 },
    );
    expect(tiny.outside.join()).toMatch(/Reynolds/);
  });
});

describe("isentropic flow", () => {
  it("gives the Mach number back", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 3, noNaN: true }), (mach) => {
        expect(machNumberOfPressureRatio(isentropicRatios(mach).pressure)).toBeCloseTo(mach, 9);
        expect(isentropicAreaRatio(mach)).toBeGreaterThanOrEqual(1 - 1e-12);
      }),
    );
  });
});

describe("restriction", () => {
  it("is undone by its inverse, in both directions", () => {
    fc.assert(
      fc.property(fc.double({ min: -0.5, max: 0.5, noNaN: true }), (massFlow) => {
        const drop = restrictionPressureDrop(massFlow, 1.2, 2e4);
        expect(restrictionMassFlow(drop, 1.2, 2e4)).toBeCloseTo(massFlow, 12);
      }),
    );
  });

  it("as an orifice is the compressible law at small drops", () => {
    const opening = { dischargeCoefficient: 0.6, area: 1e-3, density: 1.2, pressureDrop: 10 };
    const compressible = 0.6 * 1e-3 * 1e5 * orificeFlowFunction(1 - 1e-4) * Math.sqrt(1.2 / 1e5);
    expect(incompressibleOrificeFlow(opening) / compressible).toBeCloseTo(1, 3);
  });
});

describe("acoustics", () => {
  it("lowers the resonance with volume and length, and a flange lengthens the neck", () => {
    const resonator = { speedOfSound: 343, neckArea: 1e-3, effectiveLength: 0.1, volume: 0.005 };
    const frequency = helmholtzFrequency(resonator);
    expect(helmholtzFrequency({ ...resonator, volume: 0.02 })).toBeCloseTo(frequency / 2, 10);
    expect(effectiveNeckLength(0.1, 0.02, 2)).toBeCloseTo(0.134, 12);
    expect(quarterWaveFrequency(0.5, 340, 2) / quarterWaveFrequency(0.5, 340)).toBeCloseTo(3, 12);
  });
});
