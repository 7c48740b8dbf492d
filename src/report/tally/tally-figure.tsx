/** The tally picture with its axis name, its key and the letters on it. */
import type { SignatureView } from "../../job/result.ts";
import { WitnessKey } from "../charts/witness-look.tsx";
import { WITNESS_WORDS } from "../words/card-words.ts";
import { countWord } from "../words/cause-title.ts";
import { formatPercent, NARROW_SPACE } from "../words/number-words.ts";
import { typeset } from "../words/typeset.ts";
import type { TallyModel } from "./tally-model.ts";
import type { TallyNote } from "./tally-notes.ts";
import { TallyPicture } from "./tally-picture.tsx";

export function TallyFigure({ model, notes }: { readonly model: TallyModel; readonly notes: readonly TallyNote[] }) {
  const causes = [...new Set(model.bands.map((band) => band.cause))];
  return (
    <figure className="tally">
      <div className="tally-plot">
        <TallyPicture model={model} notes={notes} />
      </div>
      <p className="axis-name" aria-hidden="true">
        air into the cylinders, g/s
      </p>
      <figcaption className="legend">
        <ul>
          {model.witnesses.map((w) => (
            <li key={w}>
              <WitnessKey witness={w} />
              {WITNESS_WORDS[w]}
            </li>
          ))}
          {causes.map((cause) => (
            <li key={cause}>
              <span className="keys">
                {model.bands.map((band, k) =>
                  band.cause === cause ? <BandKey key={band.witness} band={band} order={k} /> : null,
                )}
              </span>
              {typeset(model.bands.find((band) => band.cause === cause)?.label ?? "")}
            </li>
          ))}
        </ul>
        <p>
          bars and bands: 90{NARROW_SPACE}%
          {model.vagueFrom !== null && `; pale where the bar is longer than ± ${formatPercent(model.vagueFrom, false)}`}
          {model.outside.length > 0 &&
            `; ${model.outside.length === 1 ? "one pale mark lies" : `${countWord(model.outside.length)} pale marks lie`} beyond the picture, see the table`}
        </p>
        {notes.length > 0 && (
          <dl>
            {notes.map((note) => (
              <div key={note.letter}>
                <dt>{note.letter}</dt>
                <dd>{typeset(note.text)}</dd>
              </div>
            ))}
          </dl>
        )}
      </figcaption>
    </figure>
  );
}

/** One key for each witness that the cause would move, in the witness's colour. */
function BandKey({ band, order }: { readonly band: SignatureView; readonly order: number }) {
  return (
    <svg className="key" width="22" height="14" viewBox="0 0 22 14" aria-hidden="true">
      <g className={`band w-${band.witness} band-${order}`}>
        <path className="band-area" d="M0 1H22V13H0Z" />
        <path className="band-line" d="M0 7H22" />
      </g>
    </svg>
  );
}
