/**
 * The unit of a flow column that states none, from the air the engine can have drawn; and a stated unit or displacement
 * that can't be true. A factor of 3.6 (kg/h read as g/s) shows; a fault of the meter is never that large.
 */
import type { EngineDescription } from "../../engine/index.ts";
import type { Warning } from "../../quantities/index.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { type DrawnVolume, drawnVolume } from "./drawn-volume.ts";

/** V eta over V at most and least: a scavenged engine, and one half full of recirculated gas with a low meter. */
const MOST = 1.35;
const LEAST = 0.3;
/** m3, displacements of the engines this is for, where none is stated. Common practice, no source. */
const SMALLEST = 0.6e-3;
const LARGEST = 6.5e-3;

/** share of the displacement that the best breathing moments reach at least */
const LEAST_WELL_FILLED = 0.6;

/** What a column read in g/s would have to be multiplied with if it were in another unit. */
const UNITS = [
  { symbol: "g/s", factor: 1 },
  { symbol: "kg/h", factor: 1 / 3.6 },
  { symbol: "lb/min", factor: 7.5598728 },
] as const;

export type FlowUnitVerdict =
  | { readonly kind: "agrees" | "unknown" }
  | { readonly kind: "other-unit"; readonly symbol: string; readonly factor: number; readonly text: string }
  | { readonly kind: "contradiction"; readonly warning: Warning };

export function judgeFlowUnit(
  set: Pick<ChannelSet, "channels">,
  flow: RecognisedChannel,
  engine: EngineDescription | null,
): FlowUnitVerdict {
  const drawn = drawnVolume(set, flow);
  if (drawn === null) return { kind: "unknown" };
  const own = unitFactor(flow.source.unitUsed);
  const possible = UNITS.filter(({ factor }) => isPossible(drawn, factor / own, engine));
  if (possible.some(({ symbol }) => symbol === flow.source.unitUsed)) return { kind: "agrees" };
  const [only] = possible;
  if (flow.source.unitText === null && only !== undefined && possible.length === 1) {
    const factor = only.factor / own;
    const volume = `${Math.round(drawn.median * factor * 1e6)} cm3 drawn a cycle`;
    const text = `no unit stated: of g/s, kg/h and lb/min only ${only.symbol} is believable with speed and pressure (${volume})`;
    return { kind: "other-unit", symbol: only.symbol, factor, text };
  }
  if (engine === null) return { kind: "unknown" };
  return {
    kind: "contradiction",
    warning: contradiction(
      flow,
      drawn,
      engine,
      possible.map(({ symbol }) => symbol),
    ),
  };
}

function unitFactor(symbol: string): number {
  return UNITS.find((u) => u.symbol === symbol)?.factor ?? 1;
}

function isPossible(drawn: DrawnVolume, factor: number, engine: EngineDescription | null): boolean {
  const most = engine === null ? LARGEST : MOST * engine.displacement;
  const least = engine === null ? SMALLEST * LEAST_WELL_FILLED : LEAST * engine.displacement;
  // The upper decile breathes best: it shows the displacement, and must not exceed it by much.
  return drawn.high * factor <= most && drawn.high * factor >= least;
}

function contradiction(
  flow: RecognisedChannel,
  drawn: DrawnVolume,
  engine: EngineDescription,
  fits: readonly string[],
): Warning {
  const cm3 = (volume: number) => Math.round(volume * 1e6);
  const hint = fits.length === 0 ? "" : ` In ${fits.join(" or ")} it would fit.`;
  return {
    code: "displacement-contradiction",
    text: `"${flow.source.header}" (column ${flow.source.column}) in ${flow.source.unitUsed} with speed and pressure would need an engine that draws ${cm3(drawn.high)} cm3 a cycle; ${cm3(engine.displacement)} cm3 are stated.${hint}`,
  };
}
