/** The usual cautions of the trade, by key (cautions.json). */
import table from "./cautions.json" with { type: "json" };

const texts: { readonly [key: string]: string } = table.texts;

export function cautionTexts(keys: readonly string[]): string[] {
  return keys.map((key) => {
    const text = texts[key];
    if (text === undefined) throw new Error(`Assertion failed: there is no caution ${key}`);
    return text;
  });
}

/** Shown with every card. */
export function cautionsAlways(): string[] {
  return cautionTexts(table.always);
}
