import type { BestPitch } from "../../model/bestPitch.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { formatNumber } from "../../quantity/format.ts";
import { candidateAt, type PitchDuty } from "./pitchDuty.ts";

/**
 * The pitch with which a propeller of given diameter and rotation rate does a duty, between `low` and `high`: thrust
 * and power grow with the pitch.
 *
 * Returns  `failed`, with what the range of pitch gives, where the duty lies outside it.
 */
export function onlyPitch(duty: PitchDuty, low: number, high: number): BestPitch {
  const { duty: asked } = duty.request;
  const [quantity, unit, wanted] =
    asked.given === "thrust"
      ? (["thrust", "N", asked.thrust] as const)
      : (["shaftPower", "W", asked.shaftPower] as const);
  // A pitch too low for the speed pushes backwards: nothing to give.
  const given = (pitch: number) => candidateAt(duty, pitch)?.[quantity] ?? 0;
  const [least, most] = [given(low), given(high)];
  if (!(least <= wanted && wanted <= most)) {
    const name = quantity === "thrust" ? "thrust" : "shaft power";
    const range = `${formatNumber(least)} to ${formatNumber(most)} ${unit}`;
    const reason = `At this diameter, rotation rate and speed pitch ratios from ${low} to ${high} give a ${name} of ${range}, and ${formatNumber(wanted)} ${unit} is asked for.`;
    return { state: "failed", reason, warnings: [] };
  }
  const { root, converged } = bracketedRoot((pitch) => given(pitch) - wanted, low, high, { relativeTolerance: 1e-10 });
  const best = candidateAt(duty, root);
  if (best === null || !converged || Math.abs(best[quantity] - wanted) > 1e-6 * wanted) {
    const reason = "The pitch that takes up this power no longer pushes at this speed.";
    return { state: "failed", reason, warnings: [] };
  }
  return { state: "found", kind: "only", best, reynolds: null, candidates: [], warnings: [] };
}
