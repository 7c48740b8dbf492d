/** An answer of `airtally meter` in a terminal, read in ten seconds: one sentence, a small drawing, the numbers, what to mind. */

import type { MeterResult } from "../../job/meter-result.ts";
import { NARROW_SPACE } from "../words/number-words.ts";
import { wrapText } from "../words/wrap-text.ts";
import { ambientBlocks } from "./text/ambient-blocks.ts";
import { benchBlocks } from "./text/bench-blocks.ts";
import { convertBlocks } from "./text/convert-blocks.ts";
import { curveBlocks } from "./text/curve-blocks.ts";
import { fitBlocks } from "./text/fit-blocks.ts";

export type MeterTextOptions = { readonly width: number };

const NARROWEST = 60;

export function renderMeterText(result: MeterResult, options: MeterTextOptions): string {
  const width = Math.max(NARROWEST, options.width);
  const blocks = [
    wrapText(result.headline, width),
    ...blocksOf(result, width),
    result.warnings.flatMap((warning) => wrapText(`- ${warning.text}`, width, "  ")),
  ];
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")
    .replaceAll(NARROW_SPACE, " ")}\n`;
}

function blocksOf(result: MeterResult, width: number): string[][] {
  switch (result.kind) {
    case "convert":
      return convertBlocks(result, width);
    case "curve":
      return curveBlocks(result, width);
    case "ambient":
      return ambientBlocks(result, width);
    case "fit":
      return fitBlocks(result, width);
    case "bench":
      return benchBlocks(result, width);
  }
}
