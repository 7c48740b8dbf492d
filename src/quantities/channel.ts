/**
 * A measured signal in SI units with its own time stamps. Typed by unit, so that swapping two channels of different
 * units does not compile; the numbers themselves stay plain.
 */
export type SiUnit =
  | "Pa"
  | "K"
  | "kg/s"
  | "m3/s"
  | "1/s"
  | "1"
  | "s"
  | "V"
  | "A"
  | "m/s"
  | "m"
  | "rad"
  | "kg"
  | "J"
  | "W"
  | "N m"
  | "ohm";

/** Why a sample can or cannot be used. Never a silent NaN or zero. */
export const QUALITY = {
  good: 0,
  missing: 1,
  clipped: 2,
  outsideValidity: 3,
  interpolated: 4,
  stuck: 5,
  notANumber: 6,
} as const;
export type Quality = (typeof QUALITY)[keyof typeof QUALITY];

export type Channel<Unit extends SiUnit = SiUnit> = {
  readonly name: string;
  readonly unit: Unit;
  /** s since the start of the recording, ascending, one for each sample */
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly quality: Uint8Array;
};
