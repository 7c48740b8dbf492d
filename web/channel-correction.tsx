/** Beside a column of the card: say what it really is, or leave it out, and run again. */
import { useId, useState } from "react";
import type { QuantityChoice } from "../edge/server/contract.ts";
import type { ChannelView } from "../src/job/result.ts";
import type { Correction } from "./channel-list-text.ts";

type Props = {
  readonly channel: ChannelView;
  readonly quantities: readonly QuantityChoice[];
  readonly busy: boolean;
  readonly onCorrect: (correction: Correction) => void;
};

const LEFT_OUT = "";

export function ChannelCorrection({ channel, quantities, busy, onCorrect }: Props) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const [quantity, setQuantity] = useState(channel.quantity ?? LEFT_OUT);
  const [unit, setUnit] = useState(channel.unit ?? "");
  const [bank, setBank] = useState("");
  const chosen = quantities.find((q) => q.id === quantity);
  const column = channel.header === "" ? `column ${channel.column}` : channel.header;
  if (!open) {
    return (
      <button type="button" className="quiet" onClick={() => setOpen(true)}>
        Correct<span className="unseen"> {column}</span>
      </button>
    );
  }
  return (
    <form
      className="correction"
      aria-label={`Correct ${column}`}
      onSubmit={(event) => {
        event.preventDefault();
        onCorrect({
          column: channel.column,
          header: channel.header,
          quantity: quantity === LEFT_OUT ? null : quantity,
          unit: unit.trim() === "" ? null : unit.trim(),
          bank: bank === "1" ? 1 : bank === "2" ? 2 : null,
        });
      }}
    >
      <label htmlFor={`${id}q`}>is</label>
      <select
        id={`${id}q`}
        value={quantity}
        onChange={(event) => {
          setQuantity(event.target.value);
          setUnit(quantities.find((q) => q.id === event.target.value)?.units[0] ?? "");
        }}
      >
        <option value={LEFT_OUT}>left out</option>
        {quantities.map((q) => (
          <option key={q.id} value={q.id}>
            {q.name}
          </option>
        ))}
      </select>
      {chosen !== undefined && chosen.units.length > 0 && (
        <>
          <label htmlFor={`${id}u`}>in</label>
          <input id={`${id}u`} list={`${id}l`} value={unit} onChange={(event) => setUnit(event.target.value)} />
          <datalist id={`${id}l`}>
            {chosen.units.map((u) => (
              <option key={u} value={u} />
            ))}
          </datalist>
        </>
      )}
      {chosen?.banked === true && (
        <>
          <label htmlFor={`${id}b`}>bank</label>
          <select id={`${id}b`} value={bank} onChange={(event) => setBank(event.target.value)}>
            <option value="">not stated</option>
            <option value="1">1</option>
            <option value="2">2</option>
          </select>
        </>
      )}
      <button type="submit" disabled={busy}>
        Run again
      </button>
      <button type="button" className="quiet" onClick={() => setOpen(false)}>
        Leave it
      </button>
    </form>
  );
}
