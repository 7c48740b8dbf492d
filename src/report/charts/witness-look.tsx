/**
 * One shape and one colour for each witness, so that either alone tells them apart (also in black and white). Colours
 * stand in styles/tokens.css, chosen from a palette that the common forms of colour blindness keep distinct.
 */
import type { WitnessId } from "../../job/result.ts";

type Look = { readonly path: string; readonly filled: boolean };

const LOOKS: { readonly [id in WitnessId]: Look } = {
  meter: { path: "M-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z", filled: true },
  "meter-2": { path: "M0 -5L5 0L0 5L-5 0Z", filled: true },
  pressure: { path: "M-3.6 -3.6H3.6V3.6H-3.6Z", filled: false },
  throttle: { path: "M-4 -4L4 4M-4 4L4 -4", filled: false },
  fuel: { path: "M0 -4.8L4.5 3.4H-4.5Z", filled: false },
  "fuel-bank1": { path: "M0 -4.8L4.5 3.4H-4.5Z", filled: true },
  "fuel-bank2": { path: "M0 4.8L4.5 -3.4H-4.5Z", filled: false },
  exhaust: { path: "M-5 0H5M0 -5V5", filled: false },
};

export const WITNESS_ORDER = Object.keys(LOOKS) as readonly WitnessId[];

/** The mark at the origin of its parent; `open` draws it hollow and larger (a point that a note speaks of). */
export function WitnessMark({ witness, open = false }: { readonly witness: WitnessId; readonly open?: boolean }) {
  const look = LOOKS[witness];
  return (
    <path
      d={look.path}
      className={`mark w-${witness} ${look.filled && !open ? "mark-filled" : "mark-open"}`}
      transform={open ? "scale(1.25)" : undefined}
    />
  );
}

/** The mark as it stands beside a word. */
export function WitnessKey({ witness }: { readonly witness: WitnessId }) {
  return (
    <svg className="key" width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
      <WitnessMark witness={witness} />
    </svg>
  );
}
