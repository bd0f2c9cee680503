/**
 * Changes of K_T and K_Q of the Wageningen B series with the Reynolds number: each row is C and the powers of L, Z,
 * A_E/A_0, P/D and J, with L = log10(Re) - 0.301 and Re that of the section at 0.75 of the radius.
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 6 (p. 257), 2e6 to 2e9.
 *          Copies in circulation lack the square of L in term 7 of K_T, put one into its term 9, or give A_E/A_0 to the
 *          first power in term 13 of K_Q: none of these vanishes at 2e6, as the correction must.
 */
export type CorrectionTerm = readonly [
  coefficient: number,
  reynolds: number,
  blades: number,
  area: number,
  pitch: number,
  advance: number,
];

/** ΔK_T. */
export const THRUST_CORRECTION: readonly CorrectionTerm[] = [
  [0.000353485, 0, 0, 0, 0, 0],
  [-0.00333758, 0, 0, 1, 0, 2],
  [-0.00478125, 0, 0, 1, 1, 1],
  [0.000257792, 2, 0, 1, 0, 2],
  [0.0000643192, 1, 0, 0, 6, 2],
  [-0.0000110636, 2, 0, 0, 6, 2],
  [-0.0000276305, 2, 1, 1, 0, 2],
  [0.0000954, 1, 1, 1, 1, 1],
  [0.0000032049, 1, 2, 1, 3, 1],
];

/** ΔK_Q. */
export const TORQUE_CORRECTION: readonly CorrectionTerm[] = [
  [-0.000591412, 0, 0, 0, 0, 0],
  [0.00696898, 0, 0, 0, 1, 0],
  [-0.0000666654, 0, 1, 0, 6, 0],
  [0.0160818, 0, 0, 2, 0, 0],
  [-0.000938091, 1, 0, 0, 1, 0],
  [-0.00059593, 1, 0, 0, 2, 0],
  [0.0000782099, 2, 0, 0, 2, 0],
  [0.0000052199, 1, 1, 1, 0, 2],
  [-0.00000088528, 2, 1, 1, 1, 1],
  [0.0000230171, 1, 1, 0, 6, 0],
  [-0.00000184341, 2, 1, 0, 6, 0],
  [-0.00400252, 1, 0, 2, 0, 0],
  [0.000220915, 2, 0, 2, 0, 0],
];
