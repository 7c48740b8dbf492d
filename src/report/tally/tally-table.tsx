/** The numbers of the tally picture as a table, for those who read rather than look. */
import type { Outcome } from "../../job/result.ts";
import { WITNESS_WORDS } from "../words/card-words.ts";
import { formatNumber } from "../words/number-words.ts";
import type { TallyModel } from "./tally-model.ts";
import { departureText } from "./tally-picture.tsx";

export function TallyTable({ outcome, model }: { readonly outcome: Outcome; readonly model: TallyModel }) {
  const marks = [...model.marks, ...model.outside];
  const several = outcome.result.recordings.length > 1;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className="scroll" aria-label="The tally as a table" tabIndex={0}>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">stretch</th>
            {several && <th scope="col">recording</th>}
            <th scope="col">time, s</th>
            <th scope="col">speed, rev/min</th>
            <th scope="col">manifold, kPa</th>
            <th scope="col">air, g/s (90 %)</th>
            {model.witnesses.map((w) => (
              <th scope="col" key={w}>
                {WITNESS_WORDS[w]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {outcome.result.operatingPoints.map((p) => (
            <tr key={p.id}>
              <th scope="row">{p.id}</th>
              {several && <td>{p.recording + 1}</td>}
              <td>
                {formatNumber(p.start_s)} to {formatNumber(p.end_s)}
              </td>
              <td>{orDash(p.speed_rpm)}</td>
              <td>{orDash(p.manifoldPressure_kPa)}</td>
              <td>
                {orDash(p.air_g_per_s)}
                {p.air_low90 !== null && p.air_high90 !== null && (
                  <>
                    {" "}
                    ({formatNumber(p.air_low90)} to {formatNumber(p.air_high90)})
                  </>
                )}
              </td>
              {model.witnesses.map((w) => {
                const mark = marks.find((m) => m.point === p && m.witness === w);
                return <td key={w}>{mark === undefined ? "none" : departureText(mark)}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function orDash(value: number | null): string {
  return value === null ? "not known" : formatNumber(value);
}
