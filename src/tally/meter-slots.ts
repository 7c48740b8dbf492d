/** The meters of the engine, made ready to read. */
import type { EngineDescription } from "../engine/index.ts";
import { type PreparedMeter, prepareMeter } from "../meters/index.ts";

export type MeterSlot = {
  readonly id: "meter" | "meter-2";
  /** null where the engine file has no usable curve: then only a recorded flow is read */
  readonly prepared: PreparedMeter | null;
  readonly bank: 1 | 2 | null;
  /** air of the whole engine over what this meter sees */
  readonly share: number;
};

/** One unnamed meter where the file names none: a recorded flow still is a witness. */
export function meterSlots(engine: EngineDescription): MeterSlot[] {
  if (engine.meters.length === 0) return [{ id: "meter", prepared: null, bank: null, share: 1 }];
  return engine.meters.map((meter) => {
    const prepared = meter.curve === null ? null : prepareMeter(meter);
    return {
      id: meter.id,
      prepared: prepared?.ok === true ? prepared.value : null,
      bank: meter.bank,
      share: meter.bank === null ? 1 : engine.banks,
    };
  });
}
