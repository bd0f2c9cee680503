import type { DescribedBlade, MeasuredPoint } from "../../../shared/model/finishFit.ts";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Subject } from "./subject.ts";

/** The blades of a propeller for blade elements: its shape, else a series outline of its pitch, blades and chord; else what is missing, in words. */
export function describedBlade({
  name,
  geometry,
  diameter,
  bladeCount,
  pitchRatio,
  chordAt07,
}: Propeller): { readonly blade: DescribedBlade } | { readonly missing: string } {
  if (geometry !== undefined) return { blade: { given: "geometry", geometry } };
  if (bladeCount === undefined || pitchRatio === undefined || chordAt07 === undefined || bladeCount < 2)
    return {
      missing: `Add the blade shape of ${name} on the Parts screen, or at least number of blades, pitch ratio and chord at 0.7 R.`,
    };
  return { blade: { given: "outline", outline: { diameter, bladeCount, pitchRatio, chordAt07 } } };
}

/** K_T and K_Q at bollard of a variant as the blade models take them; null where no shaft power is known. */
export function measuredPoint(subject: Subject): MeasuredPoint | null {
  const { thrustCoefficient, torqueCoefficient, reductions } = subject;
  if (torqueCoefficient === null || torqueCoefficient.value <= 0) return null;
  const [first] = reductions;
  const common = (share: number, of: typeof thrustCoefficient) => Math.min(share * of.value, of.standardUncertainty);
  const share = (
    fit: { readonly commonUncertainty: number; readonly coefficient: { readonly value: number } } | null | undefined,
  ) => (fit ? fit.commonUncertainty / fit.coefficient.value : 0);
  const point = (of: typeof thrustCoefficient, part: number) => ({
    value: of.value,
    standardUncertainty: Math.max(of.standardUncertainty, Number.MIN_VALUE),
    commonUncertainty: common(part, of),
  });
  return {
    advanceRatio: 0,
    thrustCoefficient: point(thrustCoefficient, share(first?.thrustFit)),
    torqueCoefficient: point(torqueCoefficient, share(first?.powerFit)),
    correlation: correlationOf(subject),
  };
}

/**
 * Correlation of K_T and K_Q that gives FM = K_T^1.5/(C_P √(π/2)) the doubt it was reduced with: a rotation rate, a
 * diameter and a density that are off move both together.
 *
 *   u²(FM)/FM² = (1.5 u_T/K_T)² + (u_Q/K_Q)² - 3 r (u_T/K_T)(u_Q/K_Q)
 *
 * Source   JCGM 100:2008, 5.2.2, equation 16.
 */
export function correlationOf({
  thrustCoefficient,
  torqueCoefficient,
  staticMerit,
}: Pick<Subject, "thrustCoefficient" | "torqueCoefficient" | "staticMerit">): number {
  if (torqueCoefficient === null || staticMerit === null) return 0;
  const relative = (of: typeof thrustCoefficient) => of.standardUncertainty / of.value;
  const [thrust, torque, merit] = [thrustCoefficient, torqueCoefficient, staticMerit].map(relative) as [
    number,
    number,
    number,
  ];
  if (!(thrust > 0 && torque > 0)) return 0;
  const correlation = (2.25 * thrust ** 2 + torque ** 2 - merit ** 2) / (3 * thrust * torque);
  // The three are means of several mountings, each with its own scatter, so that they need not agree to the last digit.
  return Math.min(MOST_CORRELATED, Math.max(-MOST_CORRELATED, correlation));
}

const MOST_CORRELATED = 0.95;
