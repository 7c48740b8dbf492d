/** A rate of rows that the lines above the table state: "Sample rate: 10 Hz", "Abtastintervall;100;ms". */
import type { TextLine } from "../recording.ts";

const RATE =
  /(?:sampl|abtast|mess|log|aufzeichnung|echantillon|muestreo|amostragem)\S*\s*(?:rate|freq\S*|takt)?[^\d\n]{0,20}?([\d.,]+)[\s,;:="']*(k?hz|\/s|per second)/i;
const INTERVAL =
  /(?:interval|intervall|intervalo|intervalle|period|periode|sampl|abtast)\S*[^\d\n]{0,20}?([\d.,]+)[\s,;:="']*(ms|s|sec)\b/i;

/** Rows a second, or null where nothing is said. */
export function rateInPreamble(lines: readonly TextLine[]): number | null {
  for (const { text } of lines) {
    const plain = text.normalize("NFD").replace(/\p{M}/gu, "");
    const rate = RATE.exec(plain);
    if (rate !== null) return positive(number(rate[1]!) * (rate[2]!.toLowerCase() === "khz" ? 1000 : 1));
    const interval = INTERVAL.exec(plain);
    if (interval !== null)
      return positive(1 / (number(interval[1]!) * (interval[2]!.toLowerCase() === "ms" ? 1e-3 : 1)));
  }
  return null;
}

function number(text: string): number {
  return Number(text.replace(",", "."));
}

function positive(rate: number): number | null {
  return rate > 0 && Number.isFinite(rate) ? rate : null;
}
