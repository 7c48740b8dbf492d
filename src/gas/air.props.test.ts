import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airConductivity, airViscosity } from "./air-transport.ts";
import { approximateMoistAirDensity } from "./approximate-density.ts";
import { cipmDensity } from "./cipm-density.ts";
import { dryAirDensity } from "./dry-air-density.ts";
import {
  dewPointFromHumidityRatio,
  dryAirShare,
  humidityRatioFromDewPoint,
  humidityRatioFromRelativeHumidity,
  humidityRatioFromVapourPressure,
  relativeHumidityFromHumidityRatio,
  vapourPressureFromHumidityRatio,
  waterMoleFraction,
} from "./humidity.ts";
import { idealMoistAirDensity, moistAirDensity } from "./moist-air-density.ts";
import { saturationPressure, saturationTemperature } from "./saturation-pressure.ts";
import { geopotentialAltitude, pressureAltitude, standardAtmosphere } from "./standard-atmosphere.ts";

const pressure = fc.double({ min: 50_000, max: 250_000, noNaN: true });
const temperature = fc.double({ min: 240, max: 360, noNaN: true });
const humidity = fc.double({ min: 0.001, max: 1, noNaN: true });

describe("humidity", () => {
  it("converts there and back", () => {
    fc.assert(
      fc.property(pressure, fc.double({ min: 240, max: 320, noNaN: true }), humidity, (p, t, h) => {
        const state = { relativeHumidity: h, temperature: t, pressure: p };
        const w = humidityRatioFromRelativeHumidity(state);
        expect(relativeHumidityFromHumidityRatio({ humidityRatio: w, temperature: t, pressure: p })).toBeCloseTo(h, 10);
        expect(humidityRatioFromVapourPressure(vapourPressureFromHumidityRatio(w, p), p)).toBeCloseTo(w, 14);
        const dewPoint = dewPointFromHumidityRatio(w, p);
        expect(dewPoint).not.toBeNull();
        expect(dewPoint!).toBeLessThanOrEqual(t + 1e-6);
        expect(humidityRatioFromDewPoint(dewPoint!, p) / w).toBeCloseTo(1, 9);
      }),
    );
  });

  it("takes 1.608 w moles of water for each mole of air, and shares that sum to one", () => {
    expect(waterMoleFraction(0.01)).toBeCloseTo(0.01608 / 1.01608, 5);
    expect(dryAirShare(0.25)).toBeCloseTo(0.8, 15);
    expect(waterMoleFraction(0)).toBe(0);
  });

  it("has no dew point for air drier than its range", () => {
    expect(dewPointFromHumidityRatio(0, 100_000)).toBeNull();
  });

  it("refuses more vapour than pressure", () => {
    expect(() => humidityRatioFromVapourPressure(100_000, 100_000)).toThrow(/vapour pressure/);
    expect(() =>
      humidityRatioFromRelativeHumidity({ relativeHumidity: 1.2, temperature: 300, pressure: 1e5 }),
    ).toThrow();
  });
});

describe("saturationPressure", () => {
  it("rises with temperature and changes from ice to water within 1e-4", () => {
    fc.assert(
      fc.property(fc.double({ min: 180, max: 600, noNaN: true }), (t) => {
        expect(saturationPressure(t * 1.0001)).toBeGreaterThan(saturationPressure(t));
      }),
    );
    expect(Math.abs(saturationPressure(273.1499999) / saturationPressure(273.15) - 1)).toBeLessThan(1e-4);
  });

  it("is undone by the boiling temperature", () => {
    fc.assert(
      fc.property(fc.double({ min: 274, max: 640, noNaN: true }), (t) => {
        expect(saturationTemperature(saturationPressure(t))).toBeCloseTo(t, 7);
      }),
    );
  });
});

describe("density", () => {
  it("falls with temperature, with humidity, and rises with pressure", () => {
    fc.assert(
      fc.property(pressure, temperature, fc.double({ min: 0, max: 0.05, noNaN: true }), (p, t, w) => {
        const air = { pressure: p, temperature: t, humidityRatio: w };
        const density = moistAirDensity(air);
        expect(moistAirDensity({ ...air, temperature: t + 1 })).toBeLessThan(density);
        expect(moistAirDensity({ ...air, humidityRatio: w + 0.01 })).toBeLessThan(density);
        expect(moistAirDensity({ ...air, pressure: p * 1.01 })).toBeGreaterThan(density);
      }),
    );
  });

  it("of the ideal mixture lies within 0.12 % of the virial one from 250 to 400 K below 120 kPa, dry to saturated", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30_000, max: 120_000, noNaN: true }),
        fc.double({ min: 250, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pressure, t, relativeHumidity) => {
          const saturated = { pressure, temperature: Math.min(t, 310), relativeHumidity };
          const air = { pressure, temperature: t, humidityRatio: humidityRatioFromRelativeHumidity(saturated) };
          expect(Math.abs(idealMoistAirDensity(air) / moistAirDensity(air) - 1)).toBeLessThan(0.0012);
        },
      ),
    );
  });

  it("of the ideal mixture is dry air's at zero humidity", () => {
    const air = { pressure: 98_000, temperature: 301, humidityRatio: 0 };
    expect(idealMoistAirDensity(air)).toBeCloseTo(dryAirDensity(98_000, 301), 14);
  });

  it("says whether CIPM-2007 is inside its range, and the short formula refuses to be used outside its own", () => {
    const inside = { pressure: 100_000, temperature: 293.15, relativeHumidity: 0.5 };
    expect(cipmDensity(inside).insideRange).toBe(true);
    expect(cipmDensity({ ...inside, temperature: 313.15 })).toMatchObject({
      insideRange: false,
      relativeStandardUncertainty: null,
    });
    expect(approximateMoistAirDensity(inside).ok).toBe(true);
    expect(approximateMoistAirDensity({ ...inside, temperature: 313.15 })).toMatchObject({
      ok: false,
      reason: "outside-validity",
    });
    expect(approximateMoistAirDensity({ ...inside, pressure: 70_000 }).ok).toBe(false);
  });

  it("refuses temperatures where the virial coefficients do not hold", () => {
    expect(() => moistAirDensity({ pressure: 1e5, temperature: 600, humidityRatio: 0 })).toThrow(/temperature/);
    expect(() => dryAirDensity(1e5, 0)).toThrow(/temperature/);
  });
});

describe("standardAtmosphere", () => {
  it("is undone by the pressure altitude", () => {
    fc.assert(
      fc.property(fc.double({ min: -2000, max: 11_000, noNaN: true }), (altitude) => {
        expect(pressureAltitude(standardAtmosphere(altitude).pressure)).toBeCloseTo(altitude, 6);
      }),
    );
  });

  it("loses 11 to 12 kPa in the first thousand metres, as the trade reckons", () => {
    const lost = standardAtmosphere(0).pressure - standardAtmosphere(1000).pressure;
    expect(lost).toBeGreaterThan(11_000);
    expect(lost).toBeLessThan(12_000);
  });

  it("lies lower in geopotential than in geometric metres, by 2.5 m at 4 km", () => {
    expect(4000 - geopotentialAltitude(4000)).toBeCloseTo(2.5, 1);
  });

  it("refuses altitudes outside the troposphere", () => {
    expect(() => standardAtmosphere(20_000)).toThrow(/altitude/);
  });
});

describe("transport properties", () => {
  it("rise with temperature and keep a Prandtl number near 0.71", () => {
    fc.assert(
      fc.property(temperature, (t) => {
        expect(airViscosity(t + 1)).toBeGreaterThan(airViscosity(t));
        expect(airConductivity(t + 1)).toBeGreaterThan(airConductivity(t));
        expect((airViscosity(t) * 1006) / airConductivity(t)).toBeCloseTo(0.71, 1);
      }),
    );
  });
});
