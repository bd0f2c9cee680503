import { type MotionAt, type MovingBody, slowed } from "../shared/vehicle/motion/closedForms.ts";

/** The product's own form for a body (kg, N·s²/m², N·s/m) that slows from a speed (m/s), after a time (s). */
export const coastDown = ({ mass, quadratic, linear = 0 }: MovingBody, startSpeed: number, time: number): MotionAt =>
  slowed({ quadratic: quadratic / mass, linear: linear / mass }, startSpeed, time);

/**
 * Speed and way of a body that a constant force (N) pushes from rest, after `time` (s).
 *
 *   V_∞ = [√(a² + 4 b F) − a]/(2 b),   s = √(a² + 4 b F)/(2 M)
 *   u = s t:  V = (2 F/M) · tanh u / (2 s + (a/M) tanh u),   x = (M/b) {ln[cosh u + (a/(2 M s)) sinh u] − a t/(2 M)}
 *   a = 0: V = √(F/b) tanh(t √(F b)/M),   x = (M/b) ln cosh(t √(F b)/M)
 *
 * Source   separation of variables (Riccati equation); a = 0 as in textbooks; reference/vehicleMotionForms.test.ts holds
 *          it against scipy.
 */
export function startUp({ mass: M, quadratic: b, linear: a = 0 }: MovingBody, F: number, time: number): MotionAt {
  const root = Math.sqrt(a * a + 4 * b * F);
  const u = (root * time) / (2 * M);
  const tanh = Math.tanh(u);
  // ln cosh u = u + ln[(1 + e^(−2u))/2] does not overflow.
  const logCosh = u + Math.log1p(Math.exp(-2 * u)) - Math.LN2;
  const distance = (M / b) * (logCosh + Math.log1p((a / root) * tanh) - (a * time) / (2 * M));
  return { speed: (2 * F * tanh) / (root + a * tanh), distance };
}
