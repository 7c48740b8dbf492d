/** Section "Engine and meter": what is known, and, in rows of their own, what is not known and what that costs. */
import type { EngineView } from "../../job/result.ts";

export function Engine({ engine }: { readonly engine: EngineView }) {
  const known = engine.facts.filter((f) => f.value !== null);
  const unknown = engine.facts.filter((f) => f.value === null);
  return (
    <>
      <p className="lead">{engine.sentence}</p>
      {engine.note !== null && <p className="note">{engine.note}</p>}
      {known.length > 0 && (
        <dl className="facts">
          {known.map((fact) => (
            <div key={fact.label}>
              <dt>{fact.label}</dt>
              <dd className="fact-value">{fact.value}</dd>
            </div>
          ))}
        </dl>
      )}
      {unknown.length > 0 && (
        <>
          <h3>Not stated, and what that costs</h3>
          <dl className="facts facts-unknown">
            {unknown.map((fact) => (
              <div key={fact.label}>
                <dt>{fact.label}</dt>
                <dd>{fact.cost ?? "A wider assumption is taken."}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
    </>
  );
}
