/** What `airtally meter ambient` may be told, within the ranges in which its physics holds. */
import type { MeterKind } from "../../engine/index.ts";
import { airViscosity } from "../../gas/index.ts";
import type { Compensation, MeterEnvironment } from "../../meters/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { listed } from "../outcome/words.ts";
import { type OptionTexts, optionFailure, readList, readOptions } from "./option-values.ts";

export type AmbientOptions = OptionTexts<
  | "altitudes"
  | "temperatures"
  | "tilts"
  | "seaLevelTemperature"
  | "flapTorque"
  | "preload"
  | "filmCoefficient"
  | "bore"
  | "wireDiameter"
  | "wireLength"
  | "overheat"
  | "flow"
> & { readonly compensation?: Compensation | undefined };

/** Roads end below 6 km; the wire's law holds down to the cold that this leaves. */
const ALTITUDE = { dimension: "length", low: -430, high: 6000, unit: "m" } as const;
const AIR_TEMPERATURE = { dimension: "temperature", low: 213.15, high: 373.15, unit: "degC" } as const;
const TILT = { dimension: "angle", low: -Math.PI / 4, high: Math.PI / 4, unit: "deg" } as const;

const RULES = {
  seaLevelTemperature: { dimension: "temperature", low: 233.15, high: 333.15, unit: "degC" },
  flapTorque: { dimension: "ratio", low: 0, high: 1, unit: "%" },
  preload: { dimension: "ratio", low: 0.01, high: 1, unit: "%" },
  filmCoefficient: { dimension: "ratio", low: -0.003, high: 0.003, unit: "%" },
  bore: { dimension: "length", low: 0.005, high: 0.5, unit: "mm" },
  wireDiameter: { dimension: "length", low: 1e-6, high: 2e-3, unit: "mm" },
  wireLength: { dimension: "length", low: 1e-4, high: 1, unit: "mm" },
  overheat: { dimension: "difference", low: 20, high: 150, unit: "K" },
  flow: { dimension: "massFlow", low: 1e-5, high: 5, unit: "g/s" },
} as const;

const ALTITUDES = [0, 500, 1000, 1500, 2000, 2500, 3000];
const TEMPERATURES = [-20, 0, 20, 40, 60].map((celsius) => celsius + 273.15);
const TILTS = [-20, -10, -5, 5, 10, 20].map((degrees) => (degrees * Math.PI) / 180);

export type AmbientSettings = {
  readonly altitudes: readonly number[];
  readonly temperatures: readonly number[];
  readonly tilts: readonly number[];
  /** K; null: that of the curve */
  readonly seaLevelTemperature: number | null;
  /** the flap's weight out of balance, over the full spring torque; null where not known */
  readonly flapTorque: number | null;
  readonly preload: number | null;
  readonly filmCoefficient: number | null;
  readonly wire: MeterEnvironment["wire"] | null;
};

/** `known`: what the file tells of bore and flow. */
export function readAmbientOptions(
  options: AmbientOptions,
  meter: { readonly kind: MeterKind; readonly bore: number | null; readonly largestFlow: number | null },
): Result<AmbientSettings, "option-invalid"> {
  const altitudes = listOr(options.altitudes, "altitudes", ALTITUDE, ALTITUDES);
  if (!altitudes.ok) return altitudes;
  const temperatures = listOr(options.temperatures, "temperatures", AIR_TEMPERATURE, TEMPERATURES);
  if (!temperatures.ok) return temperatures;
  const tilts = listOr(options.tilts, "tilts", TILT, TILTS);
  if (!tilts.ok) return tilts;
  const read = readOptions(options, RULES);
  if (!read.ok) return read;
  const foreign = foreignOption(options, meter.kind);
  if (foreign !== null) return foreign;
  const { seaLevelTemperature, flapTorque, preload, filmCoefficient } = read.value;
  const half = meter.largestFlow === null ? null : meter.largestFlow / 2;
  const wire = readWire({ ...read.value, bore: read.value.bore ?? meter.bore, flow: read.value.flow ?? half }, options);
  if (!wire.ok) return wire;
  return success({
    altitudes: altitudes.value,
    temperatures: temperatures.value,
    tilts: tilts.value,
    seaLevelTemperature,
    flapTorque,
    preload,
    filmCoefficient,
    wire: wire.value,
  });
}

function listOr(
  text: string | undefined,
  key: string,
  rule: typeof ALTITUDE | typeof AIR_TEMPERATURE | typeof TILT,
  usual: readonly number[],
) {
  if (text === undefined) return success(usual);
  const list = readList(text, key, rule);
  return list.ok ? success([...list.value].sort((a, b) => a - b)) : list;
}

/** An option of another kind of meter is a slip that must not pass unseen. */
function foreignOption(options: AmbientOptions, kind: MeterKind) {
  const owners: readonly (readonly [keyof AmbientOptions, MeterKind])[] = [
    ["tilts", "vane"],
    ["flapTorque", "vane"],
    ["preload", "vane"],
    ["filmCoefficient", "hot-film"],
    ["wireDiameter", "hot-wire"],
    ["wireLength", "hot-wire"],
    ["overheat", "hot-wire"],
  ];
  const found = owners.find(([key, owner]) => options[key] !== undefined && owner !== kind);
  if (found !== undefined) {
    return optionFailure(
      `The ${found[0].replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)} belongs to a ${found[1]} meter; this is a ${kind} meter.`,
      "Leave it out, or correct the kind.",
    );
  }
  if (options.tilts !== undefined && options.flapTorque === undefined) {
    return optionFailure(
      "A tilt in degrees says nothing without the flap's weight.",
      "Say its torque out of balance over the full spring torque (flap torque, such as 8 %), or leave the tilts out.",
    );
  }
  const compensating = kind === "vane" || kind === "vortex";
  if (options.compensation !== undefined && !compensating) {
    return optionFailure(
      `A ${kind} meter senses mass, so there is no density to correct.`,
      "Leave the compensation out.",
    );
  }
  return null;
}

type WireNumbers = { readonly [key in "wireDiameter" | "wireLength" | "overheat" | "bore" | "flow"]: number | null };

/** null where nothing is said of the wire: its residual is then not told. */
function readWire(w: WireNumbers, options: AmbientOptions): Result<MeterEnvironment["wire"] | null, "option-invalid"> {
  if (options.wireDiameter === undefined && options.wireLength === undefined && options.overheat === undefined)
    return success(null);
  const { wireDiameter, wireLength, overheat, bore, flow } = w;
  if (wireDiameter === null || wireLength === null || overheat === null || bore === null || flow === null) {
    const names = {
      wireDiameter: "wire diameter",
      wireLength: "wire length",
      overheat: "overheat",
      bore: "bore",
      flow: "flow",
    };
    const missing = (Object.keys(names) as (keyof WireNumbers)[])
      .filter((key) => w[key] === null)
      .map((key) => names[key]);
    return optionFailure(
      `What is left of the air temperature in a wire needs its ${listed(missing)} too.`,
      "Add it, or leave the wire out.",
    );
  }
  const geometry = { diameter: wireDiameter, length: wireLength, overheat, tubeArea: (Math.PI / 4) * bore ** 2 };
  // the correlation of heat-loss.ts, and far enough from still air that the reading can balance it
  const reynolds = (flow * wireDiameter) / (geometry.tubeArea * airViscosity(REFERENCE_TEMPERATURE + overheat / 2));
  if (!(reynolds >= 1 && reynolds <= 1e4)) {
    return failure(
      "option-invalid",
      `At this flow the wire's Reynolds number is ${Number(reynolds.toPrecision(2))}, where its law of heat loss is not to be trusted.`,
      "Check wire diameter, bore and flow: it must lie between 1 and 10,000.",
    );
  }
  return success({ geometry, massFlow: flow });
}

const REFERENCE_TEMPERATURE = 293.15;
