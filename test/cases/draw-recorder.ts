/** Who listens in a case: a tester that asks in turn, a workshop logger, or a tester whose recording has holes; and how it writes. */
import {
  type EngineDesign,
  type Family,
  loggerChannels,
  PLAIN_STYLE,
  type Recorder,
  type TableStyle,
  testerChannels,
} from "../../src/model-engine/index.ts";
import type { SeededRandom } from "../../src/numerics/index.ts";
import { CASE_PARAMETERS } from "./case-parameters.ts";
import { pick } from "./pick.ts";

const STYLES: { readonly [name: string]: TableStyle } = {
  plain: PLAIN_STYLE,
  "decimal comma": { ...PLAIN_STYLE, delimiter: ";", decimalMark: ",", units: "row", lineEnd: "\r\n" },
  "short names": { ...PLAIN_STYLE, delimiter: "\t", names: "short", units: "parentheses", time: "milliseconds" },
  "pounds and inches": { ...PLAIN_STYLE, unitSystem: "imperial", time: "clock" },
};

export type DrawnRecorder = { readonly name: string; readonly style: string; readonly recorder: Recorder };

export function drawRecorder(family: Family, design: EngineDesign, random: SeededRandom): DrawnRecorder {
  const { recorder: name } = pick(CASE_PARAMETERS.recorders, random.fork("kind"));
  const { style } = pick(CASE_PARAMETERS.styles, random.fork("style"));
  const how = STYLES[style]!;
  if (name === "logger") {
    const { rate_Hz } = pick(CASE_PARAMETERS.loggerRates, random.fork("rate"));
    return { name, style, recorder: { kind: "logger", rate: rate_Hz, style: how, channels: loggerChannels(design) } };
  }
  const [low, high] = CASE_PARAMETERS.requestTime_s;
  const requestTime = low * (high / low) ** random.fork("request").uniform();
  const tester: Recorder = {
    kind: "polled",
    channels: testerChannels(family, design),
    style: how,
    requestTime,
    jitter: 0.15 * requestTime,
    rows: "each-reading",
  };
  if (name === "tester") return { name, style, recorder: tester };
  const holes = random.fork("blemishes");
  const stuck = { column: tester.channels.indexOf("coolant"), from: 60 * holes.uniform(), seconds: 30 };
  return {
    name,
    style,
    recorder: { ...tester, blemishes: { dropouts: { perMinute: 0.3, seconds: 2 }, stuck: [stuck] } },
  };
}
