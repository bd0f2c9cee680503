import type { EvidencePoint, ModelEvidence } from "../../../../shared/model/bladeElements.ts";
import { reynoldsWords } from "../../../../shared/propeller/reynoldsWords.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { MILLIMETRE } from "../../bench/shownUnits.ts";

type Coefficient = "thrustCoefficient" | "torqueCoefficient";

function off(points: readonly EvidencePoint[], of: Coefficient): string {
  const errors = points.map((point) => error(point, of));
  return `${signed(Math.min(...errors))} to ${signed(Math.max(...errors))}\u202f%`;
}

/** Computed over measured less 1, per cent. */
function error({ measured, computed }: EvidencePoint, of: Coefficient): number {
  return 100 * (computed[of] / measured[of] - 1);
}

function signed(percent: number): string {
  if (Math.abs(percent) < 0.5) return "0";
  return `${percent < 0 ? "\u2212" : "+"}${Math.abs(percent).toFixed(0)}`;
}

const atRest = ({ advanceRatio }: EvidencePoint) => advanceRatio === 0;

/** How far the computed static coefficients lie off the measured ones, on the propeller fitted and on the one held back. */
export function evidenceSentence({ chosenOn, heldBack }: ModelEvidence): string {
  const [fitted, tested] = [chosenOn.filter(atRest), heldBack.filter(atRest)];
  return (
    `At rest the computed thrust is off by ${off(fitted, "thrustCoefficient")} and the torque by ${off(fitted, "torqueCoefficient")} on the ` +
    `propeller the numbers were chosen on, and by ${off(tested, "thrustCoefficient")} and ${off(tested, "torqueCoefficient")} on one that was held back.`
  );
}

/** One row a measured point: propeller, Reynolds number, J, then thrust and torque with what the computed is off by. */
export function evidenceRows({ chosenOn, heldBack }: ModelEvidence): string[][] {
  const row = (name: string) => (point: EvidencePoint) => [
    `${name}, ${formatQuantity(point.diameter, MILLIMETRE)}`,
    reynoldsWords(point.reynolds),
    formatNumber(point.advanceRatio),
    formatNumber(point.measured.thrustCoefficient),
    nearZero(point.measured.thrustCoefficient, 0.01)
      ? "near zero"
      : `${signed(error(point, "thrustCoefficient"))}\u202f%`,
    formatNumber(10 * point.measured.torqueCoefficient),
    nearZero(point.measured.torqueCoefficient, 0.004)
      ? "near zero"
      : `${signed(error(point, "torqueCoefficient"))}\u202f%`,
  ];
  return [...chosenOn.map(row("chosen on")), ...heldBack.map(row("held back"))];
}

/** A share of a coefficient that is about to vanish says nothing. */
function nearZero(coefficient: number, least: number): boolean {
  return Math.abs(coefficient) < least;
}
