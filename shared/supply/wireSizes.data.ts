/**
 * Copper conductors as they are sold: largest resistance at 20 °C of one conductor, Ω/m, plain copper.
 *
 * Source   IEC 60228:2004, tables 2 (class 2, stranded) and 3 (class 5, flexible); 25 to 50 mm² from memory.
 */
export interface ListedConductor {
  /** Nominal section, m². */ readonly area: number;
  /** Class 5, Ω/m. */ readonly flexible: number;
  /** Class 2, Ω/m. */ readonly stranded: number;
}

const listed = (squareMillimetres: number, flexible: number, stranded: number): ListedConductor => ({
  area: squareMillimetres * 1e-6,
  flexible: flexible * 1e-3,
  stranded: stranded * 1e-3,
});

export const LISTED_CONDUCTORS: readonly ListedConductor[] = [
  listed(0.5, 39.0, 36.0),
  listed(0.75, 26.0, 24.5),
  listed(1, 19.5, 18.1),
  listed(1.5, 13.3, 12.1),
  listed(2.5, 7.98, 7.41),
  listed(4, 4.95, 4.61),
  listed(6, 3.3, 3.08),
  listed(10, 1.91, 1.83),
  listed(16, 1.21, 1.15),
  listed(25, 0.78, 0.727),
  listed(35, 0.554, 0.524),
  listed(50, 0.386, 0.387),
];

/** AWG numbers in use for power, from thin to thick; gauges in steps of two are what shops keep. */
export const USUAL_GAUGES: readonly number[] = [28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0];
