/** A chance: ten strokes of a tally stick and its words. Never a gauge, a traffic light or a score. */
import { chanceWords } from "../../quantities/index.ts";
import { chanceStrokes } from "../words/chance-strokes.ts";

const STROKES = Array.from({ length: 10 }, (_, k) => k);

export function Chance({ probability }: { readonly probability: number }) {
  const cut = chanceStrokes(probability);
  return (
    <span className="chance">
      <svg className="strokes" width="80" height="20" viewBox="0 0 80 20" aria-hidden="true">
        {STROKES.map((k) => {
          const x = 4 + k * 6.6 + (k >= 5 ? 7 : 0);
          return <line key={k} x1={x} y1="17.5" x2={x + 3} y2="2.5" className={k < cut ? "cut" : "uncut"} />;
        })}
      </svg>
      <span className="chance-words">{chanceWords(probability)}</span>
    </span>
  );
}
