import type { FinishClaim, MeasuredPoint, SmoothGain } from "../../model/finishFit.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { NORMAL_975, uncertain } from "../../quantity/uncertain.ts";
import type { BladeAnswer, BladeResponse } from "./bladeResponse.ts";
import { claimSentence, smoothGainSentence } from "./finishInWords.ts";
import { LIFT_FACTOR_BOUNDS } from "./fitSurface.ts";

export interface ModelDoubt {
  readonly thrust: number;
  readonly torque: number;
}

/**
 * Roughness below which a wall is hydraulically smooth, m: U k/ν = 100, here 100 c/Re.
 *
 * Source   Schlichting, Boundary-Layer Theory, 7th ed. (1979), ch. XXI, admissible roughness; from memory.
 */
export const smoothRoughness = (chord: number, reynolds: number) => (100 * chord) / reynolds;

export interface SmoothComparison {
  readonly name: string;
  /** The clean smooth blade. */ readonly smooth: BladeAnswer;
  readonly measured: MeasuredPoint;
  readonly model: ModelDoubt;
  readonly chord: number;
}

/**
 * What a clean, hydraulically smooth surface could still bring over a measured finish: predicted over measured.
 *
 *   T_s/T = K_T,s/K_T at equal rotation rate;   (K_T,s/K_T) (K_Q/K_Q,s)^(2/3) at equal shaft power
 *
 * The last at bollard, where P ~ K_Q n³ and T ~ K_T n².
 *
 * Error    mostly that of the blade elements, which does not cancel here.
 */
export function smoothGain({ name, smooth, measured, model, chord }: SmoothComparison): SmoothGain {
  const { thrustCoefficient: T, torqueCoefficient: Q } = measured;
  const point = smooth.points[0]!;
  const ratioT = point.thrustCoefficient / T.value;
  const [uT, uQ] = [T.standardUncertainty / T.value, Q.standardUncertainty / Q.value];
  const thrustAtEqualRotation = uncertain(ratioT, ratioT * Math.hypot(uT, model.thrust));
  const ratioP = ratioT * (Q.value / point.torqueCoefficient) ** (2 / 3);
  // Thrust and torque go together: - 2 (2/3) r u_T u_Q.
  const variance = uT ** 2 + (4 / 9) * uQ ** 2 - (4 / 3) * measured.correlation * uT * uQ;
  const doubt = Math.sqrt(variance + model.thrust ** 2 + (4 / 9) * model.torque ** 2);
  const thrustAtEqualPower = measured.advanceRatio === 0 ? uncertain(ratioP, ratioP * doubt) : null;
  const gain = { thrustAtEqualRotation, thrustAtEqualPower, smoothRoughness: smoothRoughness(chord, smooth.reynolds) };
  return { ...gain, sentence: smoothGainSentence(name, gain) };
}

/** Lift factor to which the search for what a claim needs goes: far beyond what sections do. */
const GREATEST_SOUGHT = 5;

/** Lift factor with which smooth blades make `thrustCoefficient` at the first point; null where none is enough. */
function liftFactorFor(thrustCoefficient: number, response: BladeResponse): number | null {
  const short = (liftFactor: number) => {
    const answer = response({ roughness: 0, liftFactor, dragFactor: 1 });
    return answer === null ? Number.NaN : answer.points[0]!.thrustCoefficient - thrustCoefficient;
  };
  const low = 0.05;
  if (short(low) > 0) return low;
  if (!(short(GREATEST_SOUGHT) >= 0)) return null;
  const { root, converged } = bracketedRoot(short, low, GREATEST_SOUGHT, { relativeTolerance: 1e-6 });
  return converged ? root : null;
}

export interface ClaimToJudge {
  readonly name: string;
  readonly claimedFactor: number;
  readonly measured: MeasuredPoint;
  readonly response: BladeResponse;
  readonly model: ModelDoubt;
}

/**
 * Whether a change of surface alone can multiply the thrust of a measured finish at equal rotation rate by the claimed
 * factor: refuted where even the low end of the 95 % interval would need more lift than a surface can give, open where
 * only the value would, possible where neither does.
 */
export function judgedClaim({ name, claimedFactor, measured, response, model }: ClaimToJudge): FinishClaim {
  const { value, standardUncertainty } = measured.thrustCoefficient;
  const doubt = NORMAL_975 * Math.hypot(standardUncertainty / value, model.thrust);
  const target = claimedFactor * value;
  const liftFactorNeeded = liftFactorFor(target, response);
  const beyond = (needed: number | null) => needed === null || needed > LIFT_FACTOR_BOUNDS[1];
  const verdict = beyond(liftFactorFor(target * Math.max(0, 1 - doubt), response))
    ? "refuted"
    : beyond(liftFactorNeeded)
      ? "open"
      : "possible";
  const claim = { claimedFactor, verdict, liftFactorNeeded } as const;
  return { ...claim, sentence: claimSentence(name, claim) };
}
