/** Constants of nature and definition that units and fluids rest on. */

/** Standard acceleration of gravity g_n, m/s²; exact, 3rd CGPM (1901), BIPM SI Brochure 9th ed. (2019). */
export const STANDARD_GRAVITY = 9.80665;

/** Zero of the Celsius scale, K; exact, BIPM SI Brochure 9th ed. (2019), section 2.3.1. */
export const CELSIUS_ZERO = 273.15;

/** Standard atmosphere, Pa; exact, 10th CGPM (1954). */
export const STANDARD_ATMOSPHERE = 101325;

/** Molar gas constant as CIPM-2007 uses it, J/(mol K); Picard et al., Metrologia 45 (2008) 149. */
export const MOLAR_GAS_CONSTANT_CIPM_2007 = 8.314472;
