import { MOTOR_CONSTANTS } from "../model/motorIdentification.ts";
import type { MotorUncertainties } from "../model/parts/motor.ts";

/**
 * Covariance of K_v, R, I_0 and b, in this order, each in its SI unit, from standard uncertainties and correlations.
 *
 *   C_ij = r_ij u_i u_j;   0 for a pair of which nothing is stated
 *
 * Source   JCGM 100:2008, 5.2.2, from memory.
 */
export function covarianceOf(uncertainties: MotorUncertainties): number[][] {
  const { correlations = [] } = uncertainties;
  const u = (name: (typeof MOTOR_CONSTANTS)[number]) => uncertainties[name] ?? 0;
  return MOTOR_CONSTANTS.map((a) =>
    MOTOR_CONSTANTS.map((b) => {
      if (a === b) return u(a) ** 2;
      const pair = correlations.find(({ of, and }) => (of === a && and === b) || (of === b && and === a));
      return (pair?.coefficient ?? 0) * u(a) * u(b);
    }),
  );
}

/** The same, written as a motor keeps it: only what is not zero. */
export function uncertaintiesOf(covariance: readonly (readonly number[])[]): MotorUncertainties {
  const u = MOTOR_CONSTANTS.map((_, i) => Math.sqrt(Math.max(0, covariance[i]![i]!)));
  const correlations = MOTOR_CONSTANTS.flatMap((of, i) =>
    MOTOR_CONSTANTS.slice(i + 1).flatMap((and, k) => {
      const j = i + 1 + k;
      const coefficient = covariance[i]![j]! / (u[i]! * u[j]!);
      return u[i]! > 0 && u[j]! > 0 && coefficient !== 0
        ? [{ of, and, coefficient: Math.min(1, Math.max(-1, coefficient)) }]
        : [];
    }),
  );
  const known = MOTOR_CONSTANTS.flatMap((name, i) => (u[i]! > 0 ? [[name, u[i]!] as const] : []));
  return { ...Object.fromEntries(known), ...(correlations.length > 0 && { correlations }) };
}

/**
 * Lower triangle L of a covariance, C = L Lᵀ: its columns are independent causes that together make the covariance.
 * A constant without doubt has a row and a column of zeros; what correlations can not hold together is cut at zero.
 *
 * Source   Cholesky; Golub & Van Loan, Matrix Computations, section 4.2.
 */
export function independentCauses(covariance: readonly (readonly number[])[]): number[][] {
  const L = covariance.map((row) => row.map(() => 0));
  for (let j = 0; j < L.length; j++) {
    const rest = covariance[j]![j]! - L[j]!.slice(0, j).reduce((sum, one) => sum + one * one, 0);
    const root = rest > 1e-12 * covariance[j]![j]! ? Math.sqrt(rest) : 0;
    L[j]![j] = root;
    for (let i = j + 1; i < L.length; i++) {
      const shared = L[j]!.slice(0, j).reduce((sum, one, k) => sum + one * L[i]![k]!, 0);
      L[i]![j] = root > 0 ? (covariance[i]![j]! - shared) / root : 0;
    }
  }
  return L;
}
