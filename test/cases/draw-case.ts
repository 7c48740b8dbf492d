/**
 * Invented cases, each with its truth: engine, weather, driver, recorder and faults drawn by case-parameters.json.
 *
 * Two sets. "tuning" never sees the withheld variant, geometry or driver; every case of "final" has at least one of the three, so
 * that figures reported from it are on engines and driving the inference was not tuned on. The case of a number is the same for ever.
 */
import {
  type Ambient,
  ambientAt,
  buildEngine,
  type EngineDesign,
  FAMILY_DESIGNS,
  type Family,
  type Fault,
  type ModelEngine,
  PLAIN_STYLE,
  type PlantableCause,
  type Protocol,
  type Recorder,
  type SimulatedRecording,
  simulateRecording,
  standardTester,
  workshopLogger,
} from "../../src/model-engine/index.ts";
import { type SeededRandom, seededRandom } from "../../src/numerics/index.ts";
import { CASE_PARAMETERS, type CauseRow } from "./case-parameters.ts";
import { DRIVERS } from "./drivers.ts";
import { ofGeometry, VARIANTS } from "./engine-variants.ts";

export type CaseSet = "tuning" | "final";

export type InventedCase = {
  readonly set: CaseSet;
  readonly number: number;
  readonly family: Family;
  readonly variant: string;
  readonly geometry: string;
  readonly driver: string;
  readonly recorderName: string;
  /** the truth: none, one or two */
  readonly faults: readonly Fault[];
  readonly engine: ModelEngine;
  readonly ambient: Ambient;
  readonly protocol: Protocol;
  readonly recorder: Recorder;
  readonly seed: number;
};

export function drawCase(set: CaseSet, number: number): InventedCase {
  const random = seededRandom(CASE_PARAMETERS.version).fork(`${set} ${number}`);
  const { family, altitude_m } = pick(CASE_PARAMETERS.families, random.fork("family"));
  const { variant, geometry, driver } = drawSetting(set, random.fork("setting"));
  const base = FAMILY_DESIGNS[family as Family];
  const design = ofGeometry(VARIANTS[variant.variant]!(base), geometry.cylinders, geometry.scale);
  const seed = random.fork("seed").integer(1, 2 ** 31 - 1);
  const { recorder: recorderName } = pick(CASE_PARAMETERS.recorders, random.fork("recorder"));
  return {
    set,
    number,
    family: family as Family,
    variant: variant.variant,
    geometry: geometry.geometry,
    driver: driver.driver,
    recorderName,
    faults: drawFaults(family as Family, design, random.fork("faults")),
    engine: buildEngine(design, seed),
    ambient: drawAmbient(altitude_m, random.fork("ambient")),
    protocol: DRIVERS[driver.driver]!(random.fork("road"), design.largestSpeed),
    recorder: recorderOf(recorderName, family as Family, design, random.fork("blemishes")),
    seed,
  };
}

/** The recording, the engine file and the truth of a case: takes a good part of a second. */
export function recordCase(one: InventedCase): SimulatedRecording {
  const name = `case-${one.set}-${one.number}.csv`;
  return simulateRecording({ ...one, name });
}

function drawSetting(set: CaseSet, random: SeededRandom) {
  for (;;) {
    const variant = pick(CASE_PARAMETERS.variants, random);
    const geometry = pick(CASE_PARAMETERS.geometries, random);
    const driver = pick(CASE_PARAMETERS.drivers, random);
    const withheld = variant.withheld || geometry.withheld || driver.withheld;
    if (withheld === (set === "final")) return { variant, geometry, driver };
  }
}

function drawFaults(family: Family, design: EngineDesign, random: SeededRandom): Fault[] {
  if (random.uniform() < CASE_PARAMETERS.healthyShare) return [];
  const open = CASE_PARAMETERS.causes.filter((row) => canHave(row, family));
  const first = pick(open, random);
  const rows = [first];
  if (random.uniform() < CASE_PARAMETERS.pairShare)
    rows.push(
      pick(
        open.filter((row) => row !== first),
        random,
      ),
    );
  return rows.map((row) => drawFault(row, design, random));
}

function canHave(row: CauseRow, family: Family): boolean {
  if (row.only !== undefined) return row.only.includes(family);
  return !(row.not ?? []).includes(family);
}

function drawFault(row: CauseRow, design: EngineDesign, random: SeededRandom): Fault {
  const share = random.uniform();
  const plain = row.law === "log" ? row.low * (row.high / row.low) ** share : row.low + (row.high - row.low) * share;
  const sign = row.signs === 2 && random.uniform() < 0.5 ? -1 : 1;
  const litres = row.per === "litre" ? design.displacement * 1e3 : 1;
  const size = row.law === "share" ? 1 + sign * plain : sign * plain * litres;
  const cause = row.cause as PlantableCause;
  if (cause === "map-scaled") return { cause, size, pivot: random.uniform() < 0.5 ? "ambient" : "zero" };
  if (cause === "meter-curve-wrong") return { cause, size, errorAt30: size * (2 * random.uniform() - 1) };
  if (cause === "fuel-supply-limited") return { cause, size, loss: 0.12 + 0.2 * random.uniform() };
  return { cause, size };
}

function drawAmbient(altitude_m: readonly [number, number], random: SeededRandom): Ambient {
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const { temperature_degC, relativeHumidity, largestHumidityRatio } = CASE_PARAMETERS.ambient;
  const ambient = ambientAt({
    altitude: between(altitude_m),
    temperature: 273.15 + between(temperature_degC),
    relativeHumidity: between(relativeHumidity),
  });
  return { ...ambient, humidityRatio: Math.min(ambient.humidityRatio, largestHumidityRatio) };
}

function recorderOf(name: string, family: Family, design: EngineDesign, random: SeededRandom): Recorder {
  const tester = standardTester(family);
  const channels =
    design.lambdaProbe === "wide"
      ? tester.channels.map((id) => (id === "probeVoltage" ? ("lambda" as const) : id))
      : tester.channels;
  if (name === "tester") return { ...tester, channels };
  if (name === "logger") return workshopLogger(10, PLAIN_STYLE, design.meter?.kind ?? null);
  const slow = tester.channels.indexOf("coolant");
  return {
    ...tester,
    channels,
    blemishes: {
      dropouts: { perMinute: 0.3, seconds: 2 },
      stuck: [{ column: slow, from: 60 * random.uniform(), seconds: 30 }],
    },
  };
}

function pick<T extends { readonly weight: number }>(rows: readonly T[], random: SeededRandom): T {
  let left = random.uniform() * rows.reduce((sum, row) => sum + row.weight, 0);
  for (const row of rows) {
    left -= row.weight;
    if (left < 0) return row;
  }
  return rows[rows.length - 1]!;
}
