/**
 * Writes the lift and drag coefficient of one section at angle of attack `alpha` (rad, -π to π) to `out[0]` and `out[1]`.
 * Made once for a section and its Reynolds number; called inside the root search, so it must not allocate.
 */
export type SectionLaw = (alpha: number, out: Float64Array) => void;
