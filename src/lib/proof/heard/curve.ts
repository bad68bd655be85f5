/** A response as somebody measured it. */
export interface MeasuredCurve {
  /** Hz, over 0, rising. */
  readonly frequencies: Float64Array;
  /** dB of any reference. */
  readonly levels: Float64Array;
  /** Degrees; null where there are none. */
  readonly phases: Float64Array | null;
}
