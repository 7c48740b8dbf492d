/** What a kind of meter senses, is blind to, how it answers and how it fails. */
import type { MeterFactsSheet } from "../../../job/meter-result.ts";

export function Facts({ facts }: { readonly facts: MeterFactsSheet }) {
  const rows: readonly (readonly [string, string])[] = [
    ["senses", facts.senses],
    ["weather", facts.weather],
    ["mounting", facts.orientation],
    ["supply", facts.supply],
    ["response", facts.response],
  ];
  return (
    <>
      <dl className="facts facts-unknown">
        {rows.map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <h3>Blind to</h3>
      <FactList items={facts.blindTo} />
      <h3>How it fails</h3>
      <FactList items={facts.fails} />
    </>
  );
}

function FactList({ items }: { readonly items: readonly string[] }) {
  return (
    <ul className="plain">
      {items.map((item) => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}
