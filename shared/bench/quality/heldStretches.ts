import { type MeasuredPlateau, measurePlateau } from "../measuredPlateau.ts";
import type { RunFacts } from "../runFacts.ts";

/** Held steps that kept moving are no plateaus, but what moved them is just what a check looks for. */
type HeldFacts = Pick<RunFacts, "used" | "spans" | "table" | "channels" | "timeline" | "thrustTare">;

/**
 * Stretches of a held throttle: the plateaus that count, and the later half of each step that was set aside because it
 * kept moving. The first half of those may be the run-up.
 */
export function heldStretches(facts: HeldFacts): MeasuredPlateau[] {
  const { table, channels, timeline, thrustTare } = facts;
  const moving = facts.spans.rejected.flatMap(({ span, because }) => {
    if (because !== "still settling") return [];
    const later = {
      from: (span.from + span.to) >> 1,
      to: span.to,
      foundBy: "rotationRate",
      settlingTime: null,
    } as const;
    const measured = measurePlateau({ table, channels, timeline, thrustTare, torqueTare: null }, later);
    return measured && measured.rotationRate.mean > 0 ? [measured] : [];
  });
  return [...facts.used.map(({ measured }) => measured), ...moving].sort((a, b) => a.span.from - b.span.from);
}

/** Whether the propeller stood still in the fluid: else the coefficients of two plateaus need not agree. */
export function atBollard({ recipe }: Pick<RunFacts, "recipe">): boolean {
  return recipe.advanceSpeeds === undefined && !recipe.columns.some(({ role }) => role === "advanceSpeed");
}
