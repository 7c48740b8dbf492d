/** For tests only: an invented recording from columns of numbers, read and recognised as a file would be. */
import type { EngineDescription } from "../../engine/index.ts";
import { readRecording } from "../../recording/index.ts";
import type { ChannelList } from "../channel-list/channel-list.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { recogniseChannels } from "../recognise-channels.ts";

export type InventedColumns = Readonly<Record<string, (row: number) => number | string>>;

/** A table with a time column of `interval` seconds and the columns given, by header. */
export function tableOf(columns: InventedColumns, rows: number, interval: number): Uint8Array {
  const lines = [["Time [s]", ...Object.keys(columns)].join(";")];
  for (let row = 0; row < rows; row++) {
    lines.push([(row * interval).toFixed(3), ...Object.values(columns).map((at) => `${at(row)}`)].join(";"));
  }
  return Uint8Array.from(`${lines.join("\n")}\n`, (c) => c.charCodeAt(0));
}

export function understand(
  bytes: Uint8Array,
  options: { readonly engine?: EngineDescription; readonly pins?: ChannelList; readonly rate?: number } = {},
): ChannelSet {
  const recording = readRecording(bytes, {
    name: "invented.csv",
    ...(options.rate === undefined ? {} : { rate: options.rate }),
  });
  if (!recording.ok) throw new Error(recording.message);
  const set = recogniseChannels(recording.value, { engine: options.engine ?? null, pins: options.pins ?? null });
  if (!set.ok) throw new Error(set.message);
  return set.value;
}

export function channel(set: ChannelSet, quantity: string, instance = 1): RecognisedChannel {
  const found = set.channels.find((c) => c.quantity === quantity && c.instance === instance);
  if (found === undefined) {
    const others = [...set.channels.map((c) => c.quantity), ...set.unrecognised.map((u) => `${u.header}: ${u.reason}`)];
    throw new Error(`no ${quantity} among ${others.join(", ")}`);
  }
  return found;
}

/** An invented four-cylinder petrol engine of 2 L, metered, with what is not stated left out. */
export const INVENTED_ENGINE: EngineDescription = {
  note: "an invented engine",
  displacement: 1.998e-3,
  cylinders: 4,
  strokes: 4,
  banks: 1,
  compressionRatio: 10.5,
  valveTiming: "fixed",
  fuel: "petrol",
  ignition: "spark",
  induction: "natural",
  injection: "port",
  metering: "meter",
  meters: [],
  manifoldSensor: null,
  volumetricEfficiency: null,
  injectors: null,
  lambdaProbe: null,
  independentProbe: null,
  site: { barometer: null, outside: null },
  trimLimits: null,
  trims: null,
  egr: null,
  egrControl: null,
  purge: null,
  secondaryAir: null,
  intakeTemperatureAt: null,
  manifoldVolume: null,
  chargeVolume: null,
  throttleBore: null,
};

/** Small repeatable noise between -1 and 1. */
export function noise(seed: number): (row: number) => number {
  return (row) => {
    const x = Math.sin((row + 1) * 12.9898 + seed * 78.233) * 43_758.5453;
    return 2 * (x - Math.floor(x)) - 1;
  };
}
