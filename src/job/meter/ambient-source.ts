/** The meter that `airtally meter ambient` speaks of: kind and air of calibration; a curve is welcome but not needed. */
import type { MeterKind } from "../../engine/index.ts";
import { ASSUMED_CALIBRATION_AIR } from "../../meters/index.ts";
import { failure, type Result, success } from "../../quantities/index.ts";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import { parseJson } from "../json-text.ts";
import { optionFailure } from "./option-values.ts";
import {
  formatOf,
  isJson,
  type MeterChoice,
  type MeterSource,
  type NamedText,
  readMeterSource,
} from "./read-source.ts";

export type AmbientSource = {
  readonly file: string | null;
  readonly kind: MeterKind;
  readonly curveAir: MeterSource["curveAir"];
  /** m */
  readonly bore: number | null;
  /** kg/s, of the curve */
  readonly largestFlow: number | null;
};

const ASSUMED = { ...ASSUMED_CALIBRATION_AIR, assumed: true };
const SAY_THE_KIND = "Say which kind: vane, vortex, hot-wire or hot-film.";

export function readAmbientSource(file: NamedText | null, choice: MeterChoice): Result<AmbientSource> {
  if (file === null) {
    if (choice.kind === undefined) return optionFailure("Neither a file nor a kind of meter is named.", SAY_THE_KIND);
    return success({ file: null, kind: choice.kind, curveAir: ASSUMED, bore: null, largestFlow: null });
  }
  if (isEngineFile(file)) return fromEngineFile(file, choice);
  const source = readMeterSource(file, choice);
  if (!source.ok) return source;
  const { kind, curveAir } = source.value;
  if (kind === null) return optionFailure("A curve file does not say what kind its meter is.", SAY_THE_KIND);
  return success({ file: file.name, kind, curveAir, bore: null, largestFlow: largestFlowOf(source.value) });
}

function isEngineFile({ text }: NamedText): boolean {
  if (!isJson(text)) return false;
  const json = parseJson(text, "file");
  return json.ok && formatOf(json.value)?.startsWith("airtally-engine/") === true;
}

/** Of an engine file the meter without a curve will do. */
function fromEngineFile(file: NamedText, choice: MeterChoice): Result<AmbientSource> {
  const engine = parseEngineFile(file.text);
  if (!engine.ok) return engine;
  const meter = engine.value.meters.find((m) => choice.meter === undefined || m.id === choice.meter);
  if (meter === undefined) {
    return failure(
      "no-meter",
      `The engine file describes no ${choice.meter === undefined ? "air meter" : `"${choice.meter}"`}.`,
      'Add it under "meters" (docs/engine-file.md), or name a kind of meter instead of a file.',
    );
  }
  if (meter.curve === null) {
    if (choice.kind !== undefined && choice.kind !== meter.kind)
      return optionFailure(
        `The engine file says that its ${meter.id} is a ${meter.kind} meter, the call says ${choice.kind}.`,
        "Leave the kind out, or correct the engine file.",
      );
    return success({ file: file.name, kind: meter.kind, curveAir: ASSUMED, bore: meter.bore, largestFlow: null });
  }
  const source = readMeterSource(file, { ...choice, meter: meter.id });
  if (!source.ok) return source;
  return success({
    file: file.name,
    kind: meter.kind,
    curveAir: source.value.curveAir,
    bore: meter.bore,
    largestFlow: largestFlowOf(source.value),
  });
}

function largestFlowOf({ meter }: MeterSource): number {
  return Math.max(...Array.from(meter.curve.y, Math.abs));
}
