/** Where a differential-pressure device sits: what its coefficients depend on besides the Reynolds number. */
export type DeviceGeometry = {
  /** m */
  readonly pipeDiameter: number;
  /** 1, bore of the device over the pipe */
  readonly diameterRatio: number;
};
