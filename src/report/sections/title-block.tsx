/** The title block of the drawing: what made this sheet and from which bytes. */
import type { AirtallyResult } from "../../job/result.ts";

export function TitleBlock({ result, date }: { readonly result: AirtallyResult; readonly date: string | undefined }) {
  return (
    <footer className="title-block">
      <dl>
        <div>
          <dt>made with</dt>
          <dd>Airtally {result.toolVersion}</dd>
        </div>
        <div>
          <dt>result format</dt>
          <dd>{result.format}</dd>
        </div>
        <div>
          <dt>seed</dt>
          <dd>{result.seed}</dd>
        </div>
        <div>
          <dt>date</dt>
          <dd>{date ?? "not stated"}</dd>
        </div>
        {result.recordings.map((r) => (
          <div key={`${r.name} ${r.sha256}`} className="title-block-wide">
            <dt>{r.name}, sha256</dt>
            <dd className="sha">{r.sha256}</dd>
          </div>
        ))}
      </dl>
    </footer>
  );
}
