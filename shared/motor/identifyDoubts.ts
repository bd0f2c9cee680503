import type { IdentifiedConstants, WetLoss } from "../model/motorIdentification.ts";
import { formatQuantity, formatUncertain } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import type { MotorFit } from "./identifyFit.ts";
import { MILLIOHM } from "./identifySentence.ts";

/** Resistance that is not known to this part of itself, standard uncertainty, is told to be vague. */
const VAGUE = 0.3;
/** Scatter beyond this many times the stated uncertainties is told. */
const SCATTERED = 2;

/** What a reader must know of constants that were found all the same. */
export function identificationDoubts(
  fit: MotorFit,
  constants: IdentifiedConstants,
  wetLoss: WetLoss | null,
): Warning[] {
  return [...fitDoubts(fit), ...resistanceDoubts(constants), ...lossDoubts(constants, wetLoss)];
}

const told = (code: string, where: string, found: string, mend: string): Warning =>
  warning({ code, where, found, needed: "", mend });

function fitDoubts({ converged, scatterRatio, weighted }: MotorFit): Warning[] {
  const found: Warning[] = [];
  if (!converged)
    found.push(
      told(
        "motor.not-converged",
        "fit",
        "The search for the constants did not settle",
        "Check the points for one that is far off",
      ),
    );
  // Without stated uncertainties the ratio compares with nothing that was measured.
  if (weighted && scatterRatio > SCATTERED)
    found.push(
      told(
        "motor.scatter",
        "residuals",
        `The points scatter ${scatterRatio.toFixed(1)} times as much as their own uncertainties explain; the intervals were widened by that`,
        "A warm winding, a sagging battery or a wrong throttle does that: look at the residuals",
      ),
    );
  return found;
}

function resistanceDoubts({ resistance }: IdentifiedConstants): Warning[] {
  if (resistance.value <= 0)
    return [
      told(
        "motor.resistance-not-positive",
        "resistance",
        `The winding resistance comes out as ${formatQuantity(resistance.value, MILLIOHM)}`,
        "Is every point at full throttle that is said to be? Is the controller's resistance too large?",
      ),
    ];
  if (resistance.standardUncertainty <= VAGUE * resistance.value) return [];
  return [
    told(
      "motor.resistance-vague",
      "resistance",
      `The winding resistance is hardly known: ${formatUncertain(resistance, MILLIOHM)}`,
      "A loaded point at full throttle with more current would tell it better",
    ),
  ];
}

function lossDoubts({ noLoadCurrent, noLoadCurrentSlope }: IdentifiedConstants, wetLoss: WetLoss | null): Warning[] {
  const found: Warning[] = [];
  if ((noLoadCurrent?.value ?? 0) < 0 || (noLoadCurrentSlope?.value ?? 0) < 0)
    found.push(
      told(
        "motor.losses-not-physical",
        "no-load current",
        "The no-load current comes out below zero at rest, or falling with speed",
        "Check the zero of the current meter and that no propeller was on the shaft",
      ),
    );
  if (wetLoss && wetLoss.torque.value < 2 * wetLoss.torque.standardUncertainty)
    found.push(
      told(
        "motor.wet-loss-not-seen",
        "wet loss",
        "The extra loss in water is not clear of its doubt",
        "Is the rotor really flooded? Run the wet points at higher speed too",
      ),
    );
  return found;
}

/** `ratio`: torque constant by torque over that by voltage. */
export function torqueDisagrees(ratio: number): Warning {
  return warning({
    code: "motor.torque-disagrees",
    where: "torque",
    found: `By torque against current the torque constant is ${((ratio - 1) * 100).toFixed(1)} % ${ratio > 1 ? "above" : "below"} that of voltage and speed, and in SI the two are one constant`,
    needed: "torque, current and speed that belong together",
    mend: "Check the arm and calibration of the torque cell, the current meter, the pole pairs, and that full throttle is full",
  });
}
