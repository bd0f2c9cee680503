import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredParts } from "../../api/client.ts";
import { joined } from "../../app/words.ts";
import { withPropeller } from "./recipeEdits.ts";

interface Taken {
  readonly title: string;
  readonly sentence: string;
}

/**
 * What a run that nobody has confirmed yet was given by itself: the parts that are the only ones of their kind, and the
 * water. Null once a person has confirmed it, and for a run without propeller, which is set up by hand.
 */
export function takenForGranted({ confirmed, purpose, propellerId, recipe }: Run, parts: StoredParts): Taken | null {
  if (confirmed || purpose !== "propeller" || propellerId === undefined) return null;
  const only = [
    onlyOne(parts.propellers, propellerId, "the propeller"),
    onlyOne(parts.motors, recipe.motorId, "the motor"),
    onlyOne(parts.controllers, recipe.controllerId, "the controller"),
  ].filter((words) => words !== null);
  if (only.length === 0) return null;
  const [propeller] = parts.propellers;
  const isPropeller = parts.propellers.length === 1 && propeller?.id === propellerId;
  return {
    title: isPropeller ? `Was “${propeller.document.name}” on the stand?` : "Taken to be on the stand",
    sentence: `The log does not say what was on the stand, so ${joined(only)} ${only.length === 1 ? "was taken, the only one of its kind" : "were taken, the only ones of their kind"} in this project, in ${describeFluid(recipe.fluid)}.`,
  };
}

function onlyOne(
  stored: readonly { readonly id: string; readonly document: { readonly name: string } }[],
  id: string | undefined,
  kind: string,
): string | null {
  const [only] = stored;
  return stored.length === 1 && only?.id === id ? `${kind} “${only?.document.name}”` : null;
}

/** The run without the propeller that was taken for it, nor the variant that came with it. */
export function withoutTakenPropeller(run: Run, propeller: Propeller): Run {
  const cleared = withPropeller(run, undefined);
  return run.variant === (propeller.finish ?? "") ? { ...cleared, variant: "" } : cleared;
}
