/** What a recording's own remarks say of the engine ("# engine_cc,1086,fuel,gasoline", "Hubraum: 1,6 l"). */
import type { TextLine } from "../../recording/index.ts";

export type StatedEngine = {
  /** m3; null where nothing is said */
  readonly displacement: number | null;
  readonly fuel: "petrol" | "diesel" | null;
};

const DISPLACEMENT =
  /(?:displacement|engine[ _]?(?:cc|size|capacity)|hubraum|cylindree|cilindrada|cubatura)[^\d\n]{0,12}([\d.,]+)\s*(cm3|cm³|ccm|cc|ml|l|litres?|liters?|liter)?/i;
const PETROL = /\b(?:gasoline|petrol|benzin|ottokraftstoff|essence|gasolina)\b/i;
const DIESEL = /\b(?:diesel|gazole|gasoil|gasoleo)\b/i;
/** A number below this is litres, above it cubic centimetres. */
const LITRES_BELOW = 20;

export function statedEngine(lines: readonly TextLine[]): StatedEngine {
  let displacement: number | null = null;
  let fuel: StatedEngine["fuel"] = null;
  for (const { text } of lines) {
    const plain = text.normalize("NFD").replace(/\p{M}/gu, "");
    displacement ??= displacementIn(plain);
    fuel ??= PETROL.test(plain) ? "petrol" : DIESEL.test(plain) ? "diesel" : null;
  }
  return { displacement, fuel };
}

function displacementIn(text: string): number | null {
  const match = DISPLACEMENT.exec(text);
  const number = match === null ? Number.NaN : Number(match[1]!.replace(",", ".").replace(/[.,]$/, ""));
  if (!(number > 0)) return null;
  return number < LITRES_BELOW ? number * 1e-3 : number * 1e-6;
}
