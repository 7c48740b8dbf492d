import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monotoneCubic } from "../../numerics/index.ts";
import { type MovingVane, stepVane, vaneNaturalFrequency } from "./vane-dynamics.ts";
import { vaneAngle, vaneMassFlow, vaneSensedFlow, vaneTorque } from "./vane-law.ts";
import { vanePulsationRatio } from "./vane-pulsation.ts";
import { vaneTorqueErrorRatio } from "./vane-tilt.ts";
import { wiperAngle, wiperRatio, wiperRatioOfVoltage } from "./vane-wiper.ts";

/** An invented vane: 60 x 55 mm flap, a gap that opens exponentially. */
const angles = [0, 0.3, 0.6, 0.9, 1.2, 1.5];
const VANE: MovingVane = {
  effectiveArea: monotoneCubic(
    angles,
    angles.map((a) => 2e-5 * Math.exp(2.8 * a)),
  ),
  flapArea: 3.3e-3,
  lever: 0.033,
  springPreload: 0.012,
  springRate: 0.008,
  maximumAngle: 1.5,
  gravityTorque: 0.02,
  gravityAngle: 0,
  inertia: 6e-5,
  damping: 9e-4,
  compensation: 1,
};
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const tilt = fc.double({ min: -0.3, max: 0.3, noNaN: true });

describe("vane law", () => {
  it("gives the angle back from the sensed flow, level and tilted", () => {
    fc.assert(
      fc.property(share, tilt, (s, t) => {
        const angle = s * VANE.maximumAngle;
        const sensed = vaneSensedFlow(VANE, angle, t);
        if (sensed === null) return;
        expect(vaneAngle(VANE, sensed, t).angle).toBeCloseTo(angle, 9);
      }),
    );
  });

  it("opens further the more flow, and reads the root of density: the same angle holds sqrt 2 more mass in air twice as dense", () => {
    fc.assert(
      fc.property(share, (s) => {
        const angle = s * VANE.maximumAngle;
        expect(vaneSensedFlow(VANE, angle)!).toBeLessThan(vaneSensedFlow(VANE, angle + 1e-4)!);
        expect(vaneMassFlow(VANE, angle, 2.4)! / vaneMassFlow(VANE, angle, 1.2)!).toBeCloseTo(Math.SQRT2, 12);
      }),
    );
  });

  it("stops at its stops and says so, and has no flow where tilt takes all torque away", () => {
    expect(vaneAngle(VANE, 10)).toEqual({ angle: 1.5, atStop: true });
    expect(vaneAngle(VANE, 0)).toEqual({ angle: 0, atStop: true });
    expect(vaneSensedFlow(VANE, 0.1, -1.2)).toBeNull();
    expect(vaneMassFlow({ ...VANE, springPreload: -1 }, 0.1, 1.2)).toBeNull();
    expect(vaneTorque(VANE, 0.5)).toBeCloseTo(0.016, 12);
  });
});

describe("tilt", () => {
  it("agrees with the full torque balance at the same flow of air, small torque errors at any opening", () => {
    fc.assert(
      fc.property(share, fc.double({ min: -0.02, max: 0.02, noNaN: true }), (s, e) => {
        // a linear spring without gravity; the torque error is a change of preload
        const full = VANE.springPreload + VANE.springRate * VANE.maximumAngle;
        const tired = { ...VANE, springPreload: VANE.springPreload + e * full };
        const angle = s * VANE.maximumAngle;
        const truth = vaneSensedFlow(tired, angle)!;
        const reading = vaneSensedFlow(VANE, angle)!;
        const ratio = vaneTorqueErrorRatio({ opening: s, torqueError: e, preloadShare: VANE.springPreload / full });
        expect(ratio!).toBeCloseTo(reading / truth, 10);
      }),
    );
  });

  it("reads low when the torque helps the spring, most at small openings, and not at all when nothing is wrong", () => {
    const small = vaneTorqueErrorRatio({ opening: 0.1, torqueError: 0.05 })!;
    const large = vaneTorqueErrorRatio({ opening: 0.9, torqueError: 0.05 })!;
    expect(small).toBeLessThan(large);
    expect(large).toBeLessThan(1);
    expect(vaneTorqueErrorRatio({ opening: 0.4, torqueError: 0 })).toBe(1);
    expect(vaneTorqueErrorRatio({ opening: 0, torqueError: -0.5 })).toBeNull();
  });
});

describe("wiper", () => {
  it("converts both ways, rising and falling, and marks a ratio beyond its ends", () => {
    for (const [closedRatio, openRatio] of [
      [0.05, 0.95],
      [0.9, 0.1],
    ] as const) {
      const track = { closedRatio, openRatio, maximumAngle: 1.5 };
      expect(wiperAngle(track, wiperRatio(track, 0.7)).angle).toBeCloseTo(0.7, 12);
      expect(wiperAngle(track, 0.99).inside).toBe(false);
    }
  });

  it("cancels the supply, and a ground shift once it is known", () => {
    expect(wiperRatioOfVoltage({ voltage: 2, reference: 4 })).toBeCloseTo(
      wiperRatioOfVoltage({ voltage: 2.5, reference: 5 }),
      15,
    );
    expect(wiperRatioOfVoltage({ voltage: 2.55, reference: 5, groundOffset: 0.1 })).toBeCloseTo(0.5, 15);
  });
});

describe("dynamics", () => {
  const rest = 0.7;
  const forcing = (sensedFlow: number, pulsation = 0) => {
    const one = { sensedFlow, pulsation };
    return [one, one, one] as const;
  };

  it("rings about its new rest like a second-order system of the natural frequency and damping it states", () => {
    const light = { ...VANE, damping: 2e-4 };
    const flow = vaneSensedFlow(light, rest)!;
    const { angularFrequency, dampingRatio } = vaneNaturalFrequency(light, rest);
    expect(dampingRatio).toBeLessThan(0.5);
    const start = 1e-3;
    let state = { angle: rest + start, speed: 0 };
    const h = 1e-5;
    const damped = angularFrequency * Math.sqrt(1 - dampingRatio ** 2);
    let worst = 0;
    for (let i = 1; i * h < 6 / angularFrequency; i++) {
      state = stepVane(light, state, h, forcing(flow));
      const t = i * h;
      const closed =
        start *
        Math.exp(-dampingRatio * angularFrequency * t) *
        (Math.cos(damped * t) + (dampingRatio / Math.sqrt(1 - dampingRatio ** 2)) * Math.sin(damped * t));
      worst = Math.max(worst, Math.abs(state.angle - rest - closed));
    }
    expect(worst).toBeLessThan(0.01 * start);
  });

  it("comes to rest at the static angle after a step of flow, and stays within its stops on the way", () => {
    let state = { angle: 0, speed: 0 };
    const flow = vaneSensedFlow(VANE, 1.1)!;
    const reached = [0, 0];
    for (let i = 0; i < 40_000; i++) {
      state = stepVane(VANE, state, 5e-5, forcing(flow));
      reached[0] = Math.min(reached[0]!, state.angle);
      reached[1] = Math.max(reached[1]!, state.angle);
    }
    expect(state.angle).toBeCloseTo(1.1, 6);
    expect(reached[0]).toBe(0);
    expect(reached[1]).toBeLessThanOrEqual(VANE.maximumAngle);
  });

  it("is of fourth order: half the step leaves a sixteenth of the error, under a flow that swings", () => {
    const flow = vaneSensedFlow(VANE, rest)!;
    const { angularFrequency } = vaneNaturalFrequency(VANE, rest);
    const force = (t: number) => ({
      sensedFlow: flow * (1 + 0.1 * Math.sin(angularFrequency * t)),
      pulsation: 20 * Math.cos(2 * angularFrequency * t),
    });
    const angleAfter = (steps: number): number => {
      const h = 2 / angularFrequency / steps;
      let state = { angle: rest, speed: 0 };
      for (let i = 0; i < steps; i++) {
        const t = i * h;
        state = stepVane({ ...VANE, compensation: 0.5 }, state, h, [force(t), force(t + h / 2), force(t + h)]);
      }
      return state.angle;
    };
    const truth = angleAfter(4000);
    const errors = [20, 40, 80].map((steps) => Math.abs(angleAfter(steps) - truth));
    for (const i of [0, 1]) {
      expect(errors[i]! / errors[i + 1]!).toBeGreaterThan(13);
      expect(errors[i]! / errors[i + 1]!).toBeLessThan(20);
    }
  });

  it("does not feel pressure pulses with an equal compensation flap, and does without", () => {
    const flow = vaneSensedFlow(VANE, rest)!;
    const at = { angle: rest, speed: 0 };
    expect(stepVane(VANE, at, 1e-3, forcing(flow, 500)).angle).toBeCloseTo(rest, 9);
    expect(stepVane({ ...VANE, compensation: 0 }, at, 1e-3, forcing(flow, 500)).angle).toBeGreaterThan(rest + 1e-5);
  });

  it("hits the open stop under a flow beyond its range and rests there", () => {
    let state = { angle: 1.4, speed: 0 };
    for (let i = 0; i < 4000; i++) state = stepVane(VANE, state, 1e-4, forcing(1));
    expect(state).toEqual({ angle: 1.5, speed: 0 });
  });
});

describe("pulsation", () => {
  it("agrees with quadrature of the mean torque through reversal, and is continuous at the onset", () => {
    for (const amplitude of [0, 0.4, 1, 1.3, 2.5, 10]) {
      const steps = 200_000;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const u = 1 + amplitude * Math.sin((2 * Math.PI * (i + 0.5)) / steps);
        sum += u * Math.abs(u);
      }
      expect(vanePulsationRatio(amplitude)).toBeCloseTo(Math.sqrt(sum / steps), 6);
    }
    expect(vanePulsationRatio(1 + 1e-9)).toBeCloseTo(vanePulsationRatio(1), 7);
  });
});
