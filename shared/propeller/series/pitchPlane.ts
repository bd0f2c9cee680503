/** Powers of the pitch ratio and of the advance ratio in every published series: 0 to 6. */
export const POWERS = 7;

/**
 * A coefficient as a polynomial in pitch ratio and advance ratio: the factor of (P/D)^x J^y stands at x * POWERS +
 * y.
 */
export type PitchPlane = Float64Array;

/** A coefficient as a polynomial in the advance ratio alone: the factor of J^y stands at y. */
export type AdvancePolynomial = Float64Array;

/** Plane of the terms C (P/D)^x J^y. */
export function planeOf(terms: Iterable<readonly [coefficient: number, pitch: number, advance: number]>): PitchPlane {
  const plane = new Float64Array(POWERS * POWERS);
  for (const [coefficient, pitch, advance] of terms) plane[pitch * POWERS + advance]! += coefficient;
  return plane;
}

/**
 * The polynomial in J at one pitch ratio, by Horner's rule over the powers of P/D; written into `into`, so that a
 * search over the pitch makes no garbage.
 */
export function alongAdvance(
  plane: PitchPlane,
  pitchRatio: number,
  into: AdvancePolynomial = new Float64Array(POWERS),
): AdvancePolynomial {
  for (let y = 0; y < POWERS; y++) {
    let sum = 0;
    for (let x = POWERS - 1; x >= 0; x--) sum = sum * pitchRatio + plane[x * POWERS + y]!;
    into[y] = sum;
  }
  return into;
}

/** Value of the polynomial at advance ratio `J`. */
export function coefficientAt(polynomial: AdvancePolynomial, J: number): number {
  let sum = 0;
  for (let y = polynomial.length - 1; y >= 0; y--) sum = sum * J + polynomial[y]!;
  return sum;
}
