/**
 * EOS-80 at one atmosphere: Fofonoff & Millard, Algorithms for computation of fundamental properties of seawater,
 * Unesco Technical Papers in Marine Science 44 (1983). Powers of t (°C, IPTS-68) from 0 upwards, kg/m³.
 */
export const PURE_WATER_DENSITY = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9];
/** Factor of S. */
export const DENSITY_S = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9];
/** Factor of S^1.5. */
export const DENSITY_S_3_2 = [-5.72466e-3, 1.0227e-4, -1.6546e-6];
/** Factor of S². */
export const DENSITY_S_2 = 4.8314e-4;

/**
 * Viscosity: Sharqawy, Lienhard & Zubair, Desalination and Water Treatment 16 (2010) 354, eqs 22 and 23.
 * Powers of t (°C, ITS-90); salinity in kg/kg.
 */
export const VISCOSITY_A = [1.541, 1.998e-2, -9.52e-5];
export const VISCOSITY_B = [7.974, -7.561e-2, 4.724e-4];

/** Freezing point, °C, at one atmosphere: factors of S, S^1.5 and S²; Millero, in Unesco 44 (1983), p. 30. */
export const FREEZING = [-0.0575, 1.710523e-3, -2.154996e-4] as const;
