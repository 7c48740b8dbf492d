import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { MeterDescription, MeterKind, SignalUnit } from "../engine/index.ts";
import { QUALITY } from "../quantities/index.ts";
import { meterFlow, meterFlows } from "./meter-flow.ts";
import { meterSignal } from "./meter-signal.ts";
import { type PreparedMeter, prepareMeter } from "./prepare-meter.ts";
import { sensedDensityExponent } from "./sensed-density.ts";

const KINDS: readonly MeterKind[] = ["vane", "vortex", "hot-wire", "hot-film"];

function describeMeter(
  kind: MeterKind,
  signalUnit: SignalUnit,
  points: readonly (readonly [number, number])[],
  flow: "mass" | "volume" = "mass",
): MeterDescription {
  const at = { pressure: 101_325, temperature: 293.15 };
  return { id: "meter", kind, bank: null, bore: null, reference: null, curve: { signalUnit, flow, points, at } };
}

function prepared(description: MeterDescription): PreparedMeter {
  const result = prepareMeter(description);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

/** Curves of every kind and direction: rising voltage, falling ratio, frequency, period. */
const anyMeter = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    unit: fc.constantFrom<SignalUnit>("V", "Hz", "ms", "ratio"),
    falling: fc.boolean(),
    steps: fc.array(
      fc.tuple(fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true })),
      {
        minLength: 2,
        maxLength: 10,
      },
    ),
  })
  .map(({ kind, unit, falling, steps }) => {
    let [signal, flow] = [0.2, 0.001];
    const points: [number, number][] = [[signal, flow]];
    for (const [ds, df] of steps) {
      signal += ds;
      flow += df * 0.01;
      points.push([signal, flow]);
    }
    const flows = points.map(([, f]) => f);
    return prepared(
      describeMeter(kind, unit, falling ? points.map(([s], i) => [s, flows[flows.length - 1 - i]!]) : points),
    );
  });

const air = fc.record({
  pressure: fc.double({ min: 60_000, max: 110_000, noNaN: true }),
  temperature: fc.double({ min: 250, max: 330, noNaN: true }),
  humidityRatio: fc.double({ min: 0, max: 0.03, noNaN: true }),
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

function signalAt(meter: PreparedMeter, s: number): number {
  const { x } = meter.curve;
  const abscissa = x[0]! + s * (x[x.length - 1]! - x[0]!);
  return meter.signalUnit === "ms" ? 1 / abscissa : abscissa;
}

describe("meterFlow and meterSignal", () => {
  it("undo each other over the whole curve, for every kind and direction", () => {
    fc.assert(
      fc.property(anyMeter, air, share, (meter, a, s) => {
        const reading = meterFlow(meter, signalAt(meter, s), a);
        const { signal } = meterSignal(meter, reading.massFlow, a);
        const again = meterFlow(meter, signal, a).massFlow;
        expect(again / reading.massFlow).toBeCloseTo(1, 9);
      }),
    );
  });

  it("are monotone in the direction of the curve", () => {
    fc.assert(
      fc.property(anyMeter, air, share, share, (meter, a, s1, s2) => {
        const [low, high] = s1 < s2 ? [s1, s2] : [s2, s1];
        const difference =
          meterFlow(meter, signalAt(meter, high), a).massFlow - meterFlow(meter, signalAt(meter, low), a).massFlow;
        expect(meter.falling ? -difference : difference).toBeGreaterThanOrEqual(-1e-15);
      }),
    );
  });

  it("scale with density to the power of what the kind senses", () => {
    fc.assert(
      fc.property(anyMeter, air, share, (meter, a, s) => {
        const signal = signalAt(meter, s);
        const ratio =
          meterFlow(meter, signal, { ...a, pressure: 2 * a.pressure }).massFlow / meterFlow(meter, signal, a).massFlow;
        expect(ratio).toBeCloseTo(2 ** sensedDensityExponent(meter.kind), 12);
      }),
    );
  });

  it("are the same one by one and for a whole channel, outside the curve and for bad samples too", () => {
    fc.assert(
      fc.property(
        anyMeter,
        air,
        fc.array(fc.double({ min: -0.5, max: 1.5, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (meter, a, shares) => {
          const signal = Float64Array.from([...shares.map((s) => signalAt(meter, s)), Number.NaN]);
          const out = { massFlow: new Float64Array(signal.length), quality: new Uint8Array(signal.length) };
          meterFlows(meter, { signal, air: a }, out);
          for (let i = 0; i < signal.length - 1; i++) {
            const one = meterFlow(meter, signal[i]!, a);
            expect(out.quality[i]).toBe(one.quality);
            if (one.quality === QUALITY.notANumber) expect(out.massFlow[i]).toBeNaN();
            else expect(out.massFlow[i]).toBeCloseTo(one.massFlow, 12);
          }
          expect(out.quality[signal.length - 1]).toBe(QUALITY.notANumber);
          expect(out.massFlow[signal.length - 1]).toBeNaN();
        },
      ),
    );
  });
});
