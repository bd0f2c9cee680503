/**
 * IAPWS SR6-08(2011), Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa, Tables 1 and 6, and
 * IAPWS R7-97(2012), Industrial Formulation 1997, Table 34 (region 4).
 */

/** Specific volume, eq. 2: terms a_i α^n_i. */
export const VOLUME_A: readonly (readonly [coefficient: number, power: number])[] = [
  [6.74458446e3, 4],
  [-2.22521604e5, 5],
  [1.00231247e8, 7],
  [-1.63552118e9, 8],
  [8.32299658e9, 9],
];

/** Specific volume, eq. 2: terms b_i β^m_i. */
export const VOLUME_B: readonly (readonly [coefficient: number, power: number])[] = [
  [5.78545292e-3, 1],
  [-1.53195665e-2, 2],
  [3.11337859e-2, 3],
  [-4.23546241e-2, 4],
  [3.38713507e-2, 5],
  [-1.19946761e-2, 6],
];

/** Specific volume, eq. 2: the constant a_5. */
export const VOLUME_CONSTANT = 1.93763157e-2;

/** Specific gas constant of water in the release, J/(kg K). */
export const WATER_GAS_CONSTANT = 461.51805;

/** Viscosity, eq. 7, µPa s: terms a_i (T / 300 K)^b_i. */
export const VISCOSITY: readonly (readonly [coefficient: number, power: number])[] = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
];

/** Saturation pressure, R7-97 Table 34, n_1 to n_10. */
export const SATURATION = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
  -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
] as const;
