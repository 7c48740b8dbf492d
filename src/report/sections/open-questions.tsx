/** Section "Assumptions, and what stays open": regions not visited, warnings, and every belief held before looking. */
import type { AssumptionResult, Outcome } from "../../job/result.ts";
import { causeTitle, listed, lowerFirst } from "../words/cause-title.ts";
import { formatNumber, withUnit } from "../words/number-words.ts";

export function OpenQuestions({ outcome }: { readonly outcome: Outcome }) {
  const { result, view } = outcome;
  return (
    <>
      {result.warnings.length > 0 && (
        <>
          <h3>Worth knowing</h3>
          <ul className="plain">
            {result.warnings.map((w) => (
              <li key={`${w.code} ${w.text}`}>{w.text}</li>
            ))}
          </ul>
        </>
      )}
      {result.notVisited.length > 0 && (
        <>
          <h3>Not tested by this recording</h3>
          <dl className="facts facts-unknown">
            {result.notVisited.map((n) => (
              <div key={n.region}>
                <dt>{n.region}</dt>
                <dd>
                  {n.leavesOpen.length === 0
                    ? "leaves nothing open"
                    : `leaves open: ${listed(n.leavesOpen.map((c) => lowerFirst(causeTitle(view, c, null))))}`}
                </dd>
              </div>
            ))}
          </dl>
        </>
      )}
      {result.assumptions.length > 0 && <Assumptions assumptions={result.assumptions} />}
    </>
  );
}

/** What the engine's answer was tried against stands first; the others are folded. All of them are printed. */
function Assumptions({ assumptions }: { readonly assumptions: readonly AssumptionResult[] }) {
  const tried = assumptions.filter((a) => a.sensitivity !== NOT_VARIED);
  const rest = assumptions.filter((a) => a.sensitivity === NOT_VARIED);
  return (
    <>
      <h3>Assumed before looking</h3>
      {tried.length > 0 && <AssumptionTable assumptions={tried} />}
      {rest.length > 0 && (
        <details className="more printed">
          <summary>
            {rest.length} {tried.length > 0 && "more "}that were not varied
          </summary>
          <AssumptionTable assumptions={rest} />
        </details>
      )}
    </>
  );
}

const NOT_VARIED = "not varied";

function AssumptionTable({ assumptions }: { readonly assumptions: readonly AssumptionResult[] }) {
  const subject = sharedSubject(assumptions);
  const varied = assumptions.some((a) => a.sensitivity !== NOT_VARIED);
  return (
    <table className="stacking">
      <thead>
        <tr>
          <th scope="col">assumption</th>
          <th scope="col">value</th>
          <th scope="col">why</th>
          {varied && <th scope="col">{subject === "" ? "if it were otherwise" : `chance of “${subject}”`}</th>}
        </tr>
      </thead>
      <tbody>
        {assumptions.map((a) => (
          <tr key={a.name}>
            <th scope="row">{a.name}</th>
            <td className="number">{withUnit(formatNumber(a.value), a.unit)}</td>
            <td>{a.reason}</td>
            {varied && <td>{subject === "" ? a.sensitivity : a.sensitivity.slice(subject.length + 2)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What all sensitivities speak of ("Air enters after the throttle: ..."): said once above them; "" where they differ. */
function sharedSubject(assumptions: readonly AssumptionResult[]): string {
  const [subject = "", ...others] = new Set(assumptions.map((a) => /^(.+?): /.exec(a.sensitivity)?.[1] ?? ""));
  return others.length === 0 ? subject : "";
}
