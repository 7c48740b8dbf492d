/** What a meter of each kind looks like inside its tube: a flap on a spring, a bar that sheds vortices, a wire, a film. */
import type { Lane } from "./tile.ts";

type Glyph = { readonly lane: Lane; readonly x: number };

export const METER_BODY = 46;

export function MeterGlyph({ kind, lane, x }: Glyph & { readonly kind: string }) {
  const top = lane.axis - lane.half - 5;
  return (
    <g>
      <rect className="solid" x={x} y={top} width={METER_BODY} height={2 * lane.half + 10} />
      {kind === "vane" && <Vane lane={lane} x={x} />}
      {kind === "vortex" && <Vortex lane={lane} x={x} />}
      {kind === "hot-wire" && <Wire lane={lane} x={x} />}
      {kind === "hot-film" && <Film lane={lane} x={x} />}
    </g>
  );
}

/** Measuring flap and, at right angles to it, the compensation flap in its damping chamber. */
function Vane({ lane: { axis, half }, x }: Glyph) {
  const top = axis - half - 5;
  const pivot = { x: x + 20, y: axis - half };
  return (
    <g>
      <path className="solid" d={`M${x + 18} ${top}V${top - 13}A16 16 0 0 1 ${x + 38} ${top}Z`} />
      <path className="bold" d={`M${pivot.x} ${pivot.y}L${pivot.x + 15} ${axis + half - 1}`} />
      <path className="bold" d={`M${pivot.x} ${pivot.y}L${pivot.x + 12} ${pivot.y - 11}`} />
      <path className="thin" d={`M${pivot.x - 5} ${pivot.y + 1}a5 5 0 1 1 8 4a3 3 0 1 1 -5 -3`} />
    </g>
  );
}

/** A bluff bar and the street of vortices behind it. */
function Vortex({ lane: { axis, half }, x }: Glyph) {
  const curl = (cx: number, side: 1 | -1) =>
    `M${cx - 4} ${axis + side * 1}a4 4 0 1 ${side === 1 ? 0 : 1} 5 ${side * 3}a2.2 2.2 0 1 ${side === 1 ? 0 : 1} -1 ${side * -3.4}`;
  return (
    <g>
      <path
        className="ink-fill"
        d={`M${x + 7} ${axis - half * 0.5}L${x + 13} ${axis - half * 0.22}V${axis + half * 0.22}L${x + 7} ${axis + half * 0.5}Z`}
      />
      <path className="thin" d={curl(x + 21, -1) + curl(x + 29, 1) + curl(x + 37, -1)} />
    </g>
  );
}

/** Two prongs and a wire hung between them. */
function Wire({ lane: { axis, half }, x }: Glyph) {
  const top = axis - half - 5;
  const [left, right] = [x + 18, x + 28];
  return (
    <g>
      <rect className="solid" x={x + 13} y={top - 8} width="20" height="8" />
      <path className="line" d={`M${left} ${top}V${axis - 3}M${right} ${top}V${axis - 3}`} />
      <path
        className="thin"
        d={`M${left} ${axis - 3}L${x + 20.5} ${axis + 5}L${x + 23} ${axis - 2}L${x + 25.5} ${axis + 5}L${right} ${axis - 3}`}
      />
    </g>
  );
}

/** A plate in the stream: one heater between two sensors. */
function Film({ lane: { axis, half }, x }: Glyph) {
  const top = axis - half - 5;
  return (
    <g>
      <rect className="solid" x={x + 13} y={top - 8} width="20" height="8" />
      <rect className="solid" x={x + 15} y={top} width="16" height={half + 9} />
      <path className="bold" d={`M${x + 23} ${axis - 5}V${axis + 2}`} />
      <path className="thin" d={`M${x + 19} ${axis - 5}V${axis + 2}M${x + 27} ${axis - 5}V${axis + 2}`} />
    </g>
  );
}
