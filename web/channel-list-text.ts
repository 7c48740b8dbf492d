/** What the user corrected about columns, as a channel list (format "airtally-channels/1"). */
export type Correction = {
  /** 1 for the first column */
  readonly column: number;
  readonly header: string;
  /** null: left out */
  readonly quantity: string | null;
  readonly unit: string | null;
  readonly bank: 1 | 2 | null;
};

/** null where nothing was corrected: every column is then recognised as usual. */
export function channelListText(corrections: readonly Correction[]): string | null {
  if (corrections.length === 0) return null;
  const channels = corrections.map(({ header, column, quantity, unit, bank }) => ({
    // by name where there is one: the same column may stand elsewhere in another recording of the job
    ...(header === "" ? { column } : { header }),
    ...(quantity === null ? { ignore: true } : { quantity }),
    ...(unit === null || unit === "" ? {} : { unit }),
    ...(bank === null ? {} : { bank }),
  }));
  return `${JSON.stringify({ format: "airtally-channels/1", channels }, null, 2)}\n`;
}

/** A later correction of the same column takes the place of the earlier one. */
export function withCorrection(corrections: readonly Correction[], added: Correction): readonly Correction[] {
  const others = corrections.filter((c) => c.column !== added.column || c.header !== added.header);
  return [...others, added];
}
