/** Lift and drag of one blade section in any flow; made once for a section and its Reynolds number. */
export interface SectionLaw {
  /** Angle of attack without lift, rad; NaN where none is known. */
  readonly zeroLiftAngle: number;
  /**
   * Writes lift and drag coefficient at angle of attack `alpha` (rad, -π to π) to `out[0]` and `out[1]`. Called inside the
   * root search, so it must not allocate.
   */
  readonly coefficients: (alpha: number, out: Float64Array) => void;
}
