/** The mark of a fault in the drawing: an arrow where air comes in or goes out, else a ring around the part. */
import type { Anchor } from "./tile.ts";

const INWARD = new Set(["manifold-leak", "leak-before-throttle", "exhaust-air-added"]);
const OUTWARD = new Set(["boost-leak"]);

type Props = { readonly cause: string; readonly certain: boolean; readonly anchor: Anchor };

export function FaultGlyph({ cause, certain, anchor }: Props) {
  const kind = certain ? "fault" : "fault fault-candidate";
  const { x, y, rx, ry } = anchor;
  if (INWARD.has(cause) || OUTWARD.has(cause)) {
    const tail = 6;
    const head = INWARD.has(cause)
      ? `M${x - 6} ${y - 10}L${x} ${y - 1}L${x + 6} ${y - 10}`
      : `M${x - 6} ${tail + 9}L${x} ${tail}L${x + 6} ${tail + 9}`;
    return (
      <g className={kind}>
        <path className="breach" d={`M${x - 4} ${y}H${x + 4}`} />
        <path d={`M${x} ${tail}V${y - 1}`} />
        <path className="fault-head" d={head} />
      </g>
    );
  }
  return (
    <g className={kind}>
      <ellipse cx={x} cy={y} rx={rx} ry={ry} />
    </g>
  );
}
