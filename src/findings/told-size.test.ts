import { expect, it } from "vitest";
import { CATALOGUE } from "./catalogue.ts";
import { toldQuantile } from "./told-size.ts";

const cause = (id: string) => CATALOGUE.find((c) => c.id === id)!;
const sure = (id: string, size: number) => ({ cause: cause(id), nodes: [{ size, shape: 0, weight: 1 }] });

it("tells a size known exactly no closer than laws hold: about a sixth either way at 90 %", () => {
  expect(toldQuantile(sure("manifold-leak", 4e-6), 0.5)).toBeCloseTo(4, 9);
  const [low, high] = [0.05, 0.95].map((p) => toldQuantile(sure("manifold-leak", 4e-6), p)) as [number, number];
  expect(Math.abs(low - 4 * Math.exp(-0.1465))).toBeLessThan(0.08);
  expect(Math.abs(high - 4 * Math.exp(0.1465))).toBeLessThan(0.08);
});

it("widens a factor about one, and a negative size towards both sides of itself", () => {
  const [low, high] = [0.05, 0.95].map((p) => toldQuantile(sure("fuel-delivery-scaled", 0.8), p)) as [number, number];
  expect(low).toBeLessThan(0.8);
  expect(high).toBeGreaterThan(0.8);
  expect(high).toBeLessThan(1);
  const [a, b] = [0.05, 0.95].map((p) => toldQuantile(sure("map-biased", -3000), p)) as [number, number];
  expect(a).toBeLessThan(-3);
  expect(b).toBeGreaterThan(-3);
});
