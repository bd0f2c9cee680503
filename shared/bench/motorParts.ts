import { covarianceOf, independentCauses } from "../motor/motorCovariance.ts";
import type { CommonPart } from "./commonParts.ts";
import type { StandMotor } from "./shaftPowerOf.ts";

/** Names of the causes, in the order of MOTOR_CONSTANTS. */
const NAMES = ["speed constant", "winding resistance", "no-load current", "growth of the no-load current"] as const;

/**
 * What the doubt of the motor's constants does to a power coefficient. Constants that were identified together are
 * correlated: the covariance is split into independent causes, each named for the constant that it starts with. Runs on
 * one motor share them all, so that they nearly cancel in a ratio.
 *
 * `byConstants`: change of the coefficient by each constant, in the order of MOTOR_CONSTANTS.
 * Source   JCGM 100:2008, 5.2.2, by way of the Cholesky factor of the covariance.
 */
export function motorParts({ motor }: StandMotor, byConstants: readonly number[]): CommonPart[] {
  if (!motor.uncertainties) return [];
  const { speedConstant, resistance, noLoadCurrent, noLoadCurrentSlope } = motor;
  const identity = JSON.stringify([speedConstant, resistance, noLoadCurrent, noLoadCurrentSlope, motor.uncertainties]);
  const causes = independentCauses(covarianceOf(motor.uncertainties));
  const joint = (motor.uncertainties.correlations ?? []).length > 0;
  return NAMES.flatMap((name, j) => {
    const change = byConstants.reduce((sum, by, i) => sum + by * causes[i]![j]!, 0);
    const words =
      joint && j < NAMES.length - 1 ? `${name} of the motor, and what goes with it` : `${name} of the motor`;
    return change === 0
      ? []
      : [{ name: words, key: `motor-constant-${j}:${identity}`, change, degreesOfFreedom: Infinity }];
  });
}
