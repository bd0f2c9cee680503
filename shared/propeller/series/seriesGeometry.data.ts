/**
 * Outline and thickness of the blades of the Wageningen B series by r/R: c/D = K_r (A_E/A_0)/Z and t/D = A_r - B_r Z.
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 1; Kuiper, The
 *          Wageningen Propeller Series, MARIN publication 92-001 (1992).
 */
export interface SeriesStation {
  /** r/R. */ readonly radius: number;
  /** K_r with two or three blades. */ readonly chordOfThree: number;
  /** K_r with four and more. */ readonly chordOfFour: number;
  /** A_r. */ readonly thickness: number;
  /** B_r. */ readonly thicknessPerBlade: number;
  /** Face pitch over its nominal value with four blades; from memory. */ readonly pitchOfFour: number;
}

const row = (
  radius: number,
  chordOfThree: number,
  chordOfFour: number,
  thickness: number,
  thicknessPerBlade: number,
  pitchOfFour: number,
): SeriesStation => ({ radius, chordOfThree, chordOfFour, thickness, thicknessPerBlade, pitchOfFour });

export const WAGENINGEN_B_STATIONS: readonly SeriesStation[] = [
  row(0.2, 1.633, 1.662, 0.0526, 0.004, 0.822),
  row(0.3, 1.832, 1.882, 0.0464, 0.0035, 0.887),
  row(0.4, 2.0, 2.05, 0.0402, 0.003, 0.95),
  row(0.5, 2.12, 2.152, 0.034, 0.0025, 0.992),
  row(0.6, 2.186, 2.187, 0.0278, 0.002, 1),
  row(0.7, 2.168, 2.144, 0.0216, 0.0015, 1),
  row(0.8, 2.127, 1.97, 0.0154, 0.001, 1),
  row(0.9, 1.657, 1.582, 0.0092, 0.0005, 1),
  row(1.0, 0, 0, 0.003, 0, 1),
];

/** Hub over tip diameter: 0.180 with two and three blades is from memory. */
export const HUB_RATIO = { upToThree: 0.18, fourAndMore: 0.167 } as const;
