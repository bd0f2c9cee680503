/** How far blade elements are off at rest, in parts of the tested coefficient: least and greatest over screws of one pitch. */
export interface BroadBladeMiss {
  readonly pitchRatio: number;
  readonly thrust: readonly [number, number];
  readonly torque: readonly [number, number];
}

/**
 * Blade elements of all 21 tested B screws of 2 to 7 blades (area ratio 0.30 to 1.05) against the polynomials of their
 * tests, smooth, at a Reynolds number of 1e6 to 4e6.
 *
 * Source   of the tests: Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, tables 1 and 5.
 */
export const BROAD_BLADE_MISSES: readonly BroadBladeMiss[] = [
  { pitchRatio: 0.6, thrust: [0.03, 0.26], torque: [-0.09, 0.2] },
  { pitchRatio: 0.8, thrust: [0.02, 0.21], torque: [-0.13, 0.12] },
  { pitchRatio: 1, thrust: [0, 0.21], torque: [-0.19, 0.08] },
  { pitchRatio: 1.2, thrust: [-0.05, 0.22], torque: [-0.25, 0.03] },
  { pitchRatio: 1.4, thrust: [-0.09, 0.24], torque: [-0.3, -0.02] },
];

/** Area ratio up to which blades are as slender as the ones the section model was set at, or nearly. */
export const SLENDER = 0.25;
