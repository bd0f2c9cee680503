import type { ChargeCurvePoint } from "./chargeCurve.ts";

/**
 * Open-circuit voltage of a nickel-manganese-cobalt against graphite-silicon cell (21700, 5 Ah, limits 2.5 and 4.2 V), V,
 * against the share of its charge that is left: difference of the two electrode fits of the paper, its stoichiometry ends
 * (0.0279 to 0.9014 and 0.9084 to 0.2661) from memory.
 *
 * Source   Chen et al., Development of experimental techniques for parameterization of multi-scale lithium-ion battery
 *          models, J. Electrochem. Soc. 167 (2020) 080534.
 */
export const NICKEL_MANGANESE_COBALT_CELL: readonly ChargeCurvePoint[] = [
  { charge: 0, voltage: 2.497664 },
  { charge: 0.02, voltage: 2.837393 },
  { charge: 0.05, voltage: 3.072797 },
  { charge: 0.1, voltage: 3.257715 },
  { charge: 0.15, voltage: 3.396088 },
  { charge: 0.2, voltage: 3.449299 },
  { charge: 0.3, voltage: 3.548295 },
  { charge: 0.4, voltage: 3.634307 },
  { charge: 0.5, voltage: 3.707763 },
  { charge: 0.6, voltage: 3.808916 },
  { charge: 0.7, voltage: 3.923636 },
  { charge: 0.8, voltage: 4.02154 },
  { charge: 0.9, voltage: 4.094052 },
  { charge: 0.95, voltage: 4.115818 },
  { charge: 1, voltage: 4.192911 },
];
