/** Section "Before and after": what changed between the visits in one sentence, what each was, and the numbers behind it. */
import type { ComparisonView, VisitView, WitnessId } from "../../job/result.ts";
import { chanceWords } from "../../quantities/index.ts";
import { ANSWER_WORDS, WITNESS_WORDS } from "../words/card-words.ts";
import { listed } from "../words/cause-title.ts";
import { formatPercent } from "../words/number-words.ts";
import { tellSize } from "../words/size-words.ts";
import { typeset } from "../words/typeset.ts";

/** of the 90 % interval */
const NINETY = 1.6449;

export function BeforeAfter({ comparison }: { readonly comparison: ComparisonView }) {
  const { sentence, visits } = comparison;
  return (
    <>
      <p className="lead">{typeset(sentence)}</p>
      <h3>Each visit weighed on its own; the answer above is about the last</h3>
      <table className="stacking">
        <thead>
          <tr>
            <th scope="col">visit</th>
            <th scope="col">word</th>
            <th scope="col">what led</th>
            <th scope="col">recordings</th>
          </tr>
        </thead>
        <tbody>
          {visits.map((visit) => (
            <tr key={visit.name}>
              <th scope="row">{visit.name}</th>
              <td>
                {ANSWER_WORDS[visit.answer]} (healthy: {chanceWords(visit.healthyProbability)})
              </td>
              <td>{leadingWords(visit)}</td>
              <td>{listed(visit.recordings)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Departure from the common answer, with its 90 % interval</h3>
      <Departures visits={visits} />
    </>
  );
}

/** "Air enters after the throttle, 9 in 10, hole 4.1 mm2 (3.2 to 5.0)" */
export function leadingWords({ leading }: VisitView): string {
  if (leading === null) return "nothing stood out";
  const size = tellSize(leading.cause, leading.size);
  const alike = leading.alike.length === 0 ? "" : `; not to be told from: ${listed(leading.alike, "or")}`;
  const bank = leading.bank === null ? "" : `, bank ${leading.bank}`;
  return `${leading.title}${bank}, ${chanceWords(leading.probability)}, ${size.value} (${size.interval})${alike}`;
}

/** Each witness against the common answer of its visit, by load; the change stands last. */
function Departures({ visits }: { readonly visits: readonly VisitView[] }) {
  const [first] = visits;
  const last = visits.at(-1);
  const rows = visits
    .flatMap((v) => v.departures)
    .filter((d, i, all) => all.findIndex((e) => e.witness === d.witness && e.region === d.region) === i);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className="scroll" aria-label="Departures of the witnesses by visit" tabIndex={0}>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">witness</th>
            <th scope="col">where</th>
            {visits.map((v) => (
              <th scope="col" key={v.name}>
                {v.name}
              </th>
            ))}
            <th scope="col">change</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ witness, region }) => (
            <tr key={`${witness} ${region}`}>
              <th scope="row">{WITNESS_WORDS[witness]}</th>
              <td>{region}</td>
              {visits.map((v) => (
                <td key={v.name}>{departureWords(find(v, witness, region))}</td>
              ))}
              <td>{departureWords(changeOf(find(first, witness, region), find(last, witness, region)))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** as fractions */
type Departure = { readonly value: number; readonly sd: number };

function find(visit: VisitView | undefined, witness: WitnessId, region: string): Departure | undefined {
  const found = visit?.departures.find((d) => d.witness === witness && d.region === region);
  return found === undefined ? undefined : { value: Math.expm1(found.departure), sd: found.sd };
}

function changeOf(from: Departure | undefined, to: Departure | undefined): Departure | undefined {
  if (from === undefined || to === undefined) return undefined;
  return { value: to.value - from.value, sd: Math.hypot(from.sd, to.sd) };
}

function departureWords(departure: Departure | undefined): string {
  if (departure === undefined) return "not visited";
  const half = formatPercent(NINETY * departure.sd, false);
  return `${formatPercent(departure.value)} ± ${half}`;
}
