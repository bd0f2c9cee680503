import type { BladeGeometry } from "../../model/bladeGeometry.ts";

/**
 * Two research propellers measured in air, DA4002: two blades, section SDA1075, nominal constant pitch.
 *
 * Source   Deters, Ananda & Selig, Reynolds number effects on the performance of small-scale propellers, AIAA 2014-2151
 *          (2014); digits of the open University of Illinois propeller data set, vol. 2 (Brandt, Deters, Ananda, Dantsker,
 *          Selig). Static: every second measured point. Neighbouring points differ by up to 3 % without cause.
 * Assumed  thickness 8 % and camber 2.7 % of the chord: the source prints neither. The camber is the one whose zero-lift angle
 *          makes the thrust end where it was measured to end. Blades from 0.15 R. Kinematic viscosity 1.48e-5 m²/s, density
 *          1.2 kg/m³; only the first enters the coefficients.
 */
const ASSUMED = { thicknessRatio: 0.08, camberRatio: 0.027, hub: 0.15 };
export const RESEARCH_AIR = {
  density: 1.2,
  dynamicViscosity: 1.776e-5,
  kinematicViscosity: 1.48e-5,
  vapourPressure: 0,
};

/** r/R, c/R and blade angle in degrees. */
type Row = readonly [number, number, number];

const LARGE: readonly Row[] = [
  [0.15, 0.1198, 42.48],
  [0.2, 0.1128, 44.65],
  [0.25, 0.1436, 41.15],
  [0.3, 0.1689, 37.48],
  [0.35, 0.1775, 34.03],
  [0.4, 0.1782, 30.55],
  [0.45, 0.1773, 27.88],
  [0.5, 0.1782, 25.83],
  [0.55, 0.179, 24],
  [0.6, 0.1787, 22.4],
  [0.65, 0.1787, 21.01],
  [0.7, 0.1786, 19.81],
  [0.75, 0.1785, 18.79],
  [0.8, 0.179, 17.96],
  [0.85, 0.1792, 17.25],
  [0.9, 0.1792, 16.66],
  [0.95, 0.1692, 13.97],
  [1, 0.0154, 2.12],
];

const SMALL: readonly Row[] = [
  [0.15, 0.1253, 41.47],
  [0.2, 0.1121, 44.05],
  [0.25, 0.1384, 40.14],
  [0.3, 0.1594, 36.43],
  [0.35, 0.1705, 33.12],
  [0.4, 0.176, 30.11],
  [0.45, 0.178, 27.73],
  [0.5, 0.1783, 25.86],
  [0.55, 0.1778, 24.09],
  [0.6, 0.1788, 22.4],
  [0.65, 0.1801, 20.92],
  [0.7, 0.1797, 19.82],
  [0.75, 0.1804, 18.93],
  [0.8, 0.181, 18.17],
  [0.85, 0.1796, 17.53],
  [0.9, 0.1793, 16.84],
  [0.95, 0.1555, 14.43],
  [1, 0.0226, 15.52],
];

function geometryOf(diameter: number, rows: readonly Row[]): BladeGeometry {
  const R = diameter / 2;
  return {
    bladeCount: 2,
    diameter,
    hubDiameter: ASSUMED.hub * diameter,
    stations: rows.map(([x, chordRatio, degrees]) => ({
      radius: x * R,
      chord: chordRatio * R,
      pitchAngle: (degrees * Math.PI) / 180,
      thickness: ASSUMED.thicknessRatio * chordRatio * R,
      camber: ASSUMED.camberRatio * chordRatio * R,
    })),
  };
}

/** 9 x 6.75 in and 5 x 3.75 in. */
export const LARGE_RESEARCH_PROPELLER = geometryOf(0.2286, LARGE);
export const SMALL_RESEARCH_PROPELLER = geometryOf(0.127, SMALL);

/** Turns per minute, C_T and C_P = 2π K_Q at rest. */
export const LARGE_STATIC: readonly Row[] = [
  [1547, 0.1259, 0.0884],
  [2053, 0.129, 0.0878],
  [2503, 0.1315, 0.0879],
  [2947, 0.1327, 0.0866],
  [3527, 0.133, 0.0834],
  [3940, 0.1349, 0.0825],
  [4443, 0.1354, 0.078],
  [4930, 0.1381, 0.0787],
  [5430, 0.139, 0.0792],
  [5943, 0.1404, 0.0801],
];

export const SMALL_STATIC: readonly Row[] = [
  [1410, 0.118, 0.0974],
  [2447, 0.124, 0.0951],
  [3550, 0.1235, 0.0918],
  [4513, 0.1251, 0.0897],
  [5533, 0.1226, 0.0873],
  [6483, 0.1281, 0.0915],
  [7440, 0.129, 0.0926],
];

/** Turns per minute, J, C_T, C_P and efficiency of the large one. 5028 and 5064 rpm are printed as one run: 5046 here. */
export const LARGE_ADVANCING: readonly (readonly [number, number, number, number, number])[] = [
  [5046, 0.124, 0.1302, 0.0766, 0.211],
  [5046, 0.1864, 0.1249, 0.0747, 0.312],
  [5046, 0.2505, 0.1196, 0.0742, 0.404],
  [5046, 0.3121, 0.1115, 0.0728, 0.478],
  [5046, 0.3744, 0.1025, 0.0706, 0.544],
  [5046, 0.4367, 0.093, 0.0678, 0.599],
  [5046, 0.5008, 0.0826, 0.0643, 0.643],
  [5046, 0.5658, 0.0712, 0.0595, 0.676],
  [5046, 0.6254, 0.0574, 0.0524, 0.685],
  [5046, 0.6894, 0.0452, 0.0459, 0.678],
  [5046, 0.751, 0.0325, 0.038, 0.642],
  [5046, 0.8107, 0.0199, 0.0288, 0.56],
  [5046, 0.8762, 0.0036, 0.0155, 0.204],
  [5046, 0.9145, -0.0056, 0.0076, -0.679],
  [3030, 0.2027, 0.1163, 0.0774, 0.304],
  [3030, 0.3183, 0.1048, 0.0724, 0.461],
  [3030, 0.4178, 0.0914, 0.0678, 0.563],
  [3030, 0.5182, 0.0735, 0.0604, 0.631],
  [3030, 0.6358, 0.0533, 0.0511, 0.663],
  [3030, 0.7343, 0.0305, 0.0364, 0.617],
  [3030, 0.8368, 0.0056, 0.0177, 0.263],
];
