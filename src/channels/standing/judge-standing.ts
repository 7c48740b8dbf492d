/** Measured, computed, dead or set-point: what each channel may be used for. */
import type { RawColumn } from "../../recording/index.ts";
import type { BuiltChannel } from "../build-channels.ts";
import type { RecognisedChannel, Standing } from "../channel-set.ts";
import type { QuantityId } from "../quantity-id.ts";
import { allInSi } from "../recognition/si-scale.ts";
import { effectiveDisplacement, isMultipleOf, product, type Row } from "./computed-flow.ts";
import { deadReason } from "./dead-sensor.ts";

const SET_POINTS: readonly QuantityId[] = [
  "throttleCommanded",
  "lambdaCommanded",
  "equivalenceRatioCommanded",
  "airPerStrokeSetPoint",
  "meterFlowSetPoint",
  "fuelPressureSetPoint",
  "boostSetPoint",
  "egrCommanded",
  "purge",
];
const FLOWS: readonly QuantityId[] = ["meterFlow", "meterVolumeFlow", "fuelRate", "fuelMassRate", "carbonDioxide"];

type Verdict = { readonly standing: Standing; readonly reason: string | null };

export function judgeStanding(
  built: readonly BuiltChannel[],
  columns: readonly RawColumn[],
  rows: number,
): RecognisedChannel[] {
  const varied = engineVaried(built);
  const table = rowsOf(built, columns);
  return built.map(({ channel }) => {
    const verdict = dead(channel, varied) ?? computed(channel, built, table, rows) ?? setPoint(channel);
    return { ...channel, standing: verdict.standing, standingReason: verdict.reason };
  });
}

function setPoint(channel: RecognisedChannel): Verdict {
  return SET_POINTS.includes(channel.quantity)
    ? { standing: "set-point", reason: "what was wanted, not what was" }
    : { standing: "measured", reason: null };
}

function dead(channel: RecognisedChannel, varied: boolean): Verdict | null {
  const { quantity, values, times } = channel;
  const duration = times.length === 0 ? 0 : times[times.length - 1]! - times[0]!;
  const reason = deadReason({ quantity, values, duration, engineVaried: varied });
  return reason === null ? null : { standing: "dead", reason };
}

function engineVaried(built: readonly BuiltChannel[]): boolean {
  const speed = built.find(({ channel }) => channel.quantity === "engineSpeed")?.channel.values;
  if (speed === undefined) return false;
  const running = speed.filter((value) => value > 5).sort();
  const low = running[Math.floor(0.05 * running.length)] ?? 0;
  const high = running[Math.floor(0.95 * running.length)] ?? 0;
  return high > 1.2 * low;
}

/** The columns of the quantities in SI, row by row, as a computed column would have been computed. */
function rowsOf(built: readonly BuiltChannel[], columns: readonly RawColumn[]): Map<RecognisedChannel, Row> {
  const wanted: readonly QuantityId[] = [
    ...FLOWS,
    "engineSpeed",
    "manifoldPressure",
    "intakeTemperature",
    "calculatedLoad",
    "absoluteLoad",
  ];
  const table = new Map<RecognisedChannel, Row>();
  if (!built.some(({ channel }) => FLOWS.includes(channel.quantity))) return table;
  for (const { channel, assignment } of built) {
    const column = columns.find((candidate) => candidate.position === channel.source.column);
    if (!wanted.includes(channel.quantity) || column === undefined) continue;
    table.set(channel, {
      values: allInSi(assignment.conversion.scale, column.values, null),
      quality: column.quality,
    });
  }
  return table;
}

function computed(
  channel: RecognisedChannel,
  built: readonly BuiltChannel[],
  table: Map<RecognisedChannel, Row>,
  rows: number,
): Verdict | null {
  const own = table.get(channel);
  if (own === undefined || !FLOWS.includes(channel.quantity)) return null;
  const find = (quantity: QuantityId): Row | undefined => {
    const found = built.find(({ channel: other }) => other.quantity === quantity && other.instance === 1);
    return found === undefined ? undefined : table.get(found.channel);
  };
  const flow = product([{ row: own, power: 1 }], rows);
  const step = channel.resolution ?? 0;
  const speed = find("engineSpeed");
  const pressure = find("manifoldPressure");
  const temperature = find("intakeTemperature");
  if (speed !== undefined && pressure !== undefined) {
    const withTemperature =
      temperature === undefined
        ? null
        : product(
            [
              { row: speed, power: 1 },
              { row: pressure, power: 1 },
              { row: temperature, power: -1 },
            ],
            rows,
          );
    const found = withTemperature === null ? null : isMultipleOf(flow, withTemperature, step);
    if (found !== null) {
      const swept = effectiveDisplacement(found.constant) * 1e6;
      const size = channel.quantity === "meterFlow" ? `, with ${Math.round(swept)} cm3 times efficiency` : "";
      return {
        standing: "computed",
        reason: `equals speed x pressure / temperature to rounding in ${found.rows} rows${size}: no witness`,
      };
    }
    const without = isMultipleOf(
      flow,
      product(
        [
          { row: speed, power: 1 },
          { row: pressure, power: 1 },
        ],
        rows,
      ),
      step,
    );
    if (without !== null)
      return {
        standing: "computed",
        reason: `equals speed x pressure to rounding in ${without.rows} rows: no witness`,
      };
  }
  return fromLoad(flow, step, speed, find, rows) ?? fromOtherFlow(channel, flow, step, built, table, rows);
}

function fromLoad(
  flow: Float64Array,
  step: number,
  speed: Row | undefined,
  find: (quantity: QuantityId) => Row | undefined,
  rows: number,
): Verdict | null {
  if (speed === undefined) return null;
  for (const quantity of ["absoluteLoad", "calculatedLoad"] as const) {
    const load = find(quantity);
    if (load === undefined) continue;
    const found = isMultipleOf(
      flow,
      product(
        [
          { row: speed, power: 1 },
          { row: load, power: 1 },
        ],
        rows,
      ),
      step,
    );
    if (found !== null)
      return {
        standing: "computed",
        reason: `equals speed x load to rounding in ${found.rows} rows: no second witness`,
      };
  }
  return null;
}

/** A fixed multiple of an earlier flow: fuel from air, carbon dioxide from fuel. The meter itself stays what it is. */
function fromOtherFlow(
  channel: RecognisedChannel,
  flow: Float64Array,
  step: number,
  built: readonly BuiltChannel[],
  table: Map<RecognisedChannel, Row>,
  rows: number,
): Verdict | null {
  if (channel.quantity === "meterFlow" && channel.instance === 1) return null;
  for (const { channel: other } of built) {
    const row = table.get(other);
    if (other === channel || row === undefined || !FLOWS.includes(other.quantity)) continue;
    if (FLOWS.indexOf(other.quantity) >= FLOWS.indexOf(channel.quantity) && other.instance >= channel.instance)
      continue;
    const found = isMultipleOf(flow, product([{ row, power: 1 }], rows), Math.max(step, 0));
    if (found !== null)
      return { standing: "computed", reason: `is a fixed multiple of "${other.source.header}" in ${found.rows} rows` };
  }
  return null;
}
