import type { Grit } from "../../model/surfaceState.ts";

/**
 * Mean grain size d_s50 of coated abrasives, m.
 *
 * Source   FEPA 43-1 and 43-2, the same as ISO 6344-2:1998 (P80 to P220) and ISO 6344-3:1998 (P240 to P2000), as widely
 *          reprinted; from memory.
 */
export const GRAIN_SIZES: Readonly<Record<Grit, number>> = {
  P80: 201e-6,
  P100: 162e-6,
  P120: 125e-6,
  P150: 100e-6,
  P180: 82e-6,
  P220: 68e-6,
  P240: 58.5e-6,
  P280: 52.2e-6,
  P320: 46.2e-6,
  P360: 40.5e-6,
  P400: 35e-6,
  P500: 30.2e-6,
  P600: 25.8e-6,
  P800: 21.8e-6,
  P1000: 18.3e-6,
  P1200: 15.3e-6,
  P1500: 12.6e-6,
  P2000: 10.3e-6,
};
