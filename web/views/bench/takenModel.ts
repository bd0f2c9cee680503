import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredParts } from "../../api/client.ts";
import { joined } from "../../app/words.ts";
import { withPropeller } from "./recipeEdits.ts";

interface Taken {
  readonly title: string;
  readonly sentence: string;
  /** The propeller is one of the parts that were taken. */
  readonly isPropeller: boolean;
}

/**
 * What a run that nobody has confirmed yet was given by itself when its log came: the parts that were the only ones of their
 * kind, and the water where nobody stated it. Null once a person has confirmed the run or chosen these parts, and for a run
 * without propeller, which is set up by hand.
 */
export function takenForGranted(run: Run, parts: StoredParts): Taken | null {
  const { confirmed, purpose, propellerId, recipe } = run;
  if (confirmed || purpose !== "propeller" || propellerId === undefined) return null;
  const taken = new Set(run.takenPartIds);
  const nameOf = (stored: readonly Named[], id: string | undefined) =>
    id !== undefined && taken.has(id) ? stored.find((part) => part.id === id)?.document.name : undefined;
  const propeller = nameOf(parts.propellers, propellerId);
  const [motor, controller] = [nameOf(parts.motors, recipe.motorId), nameOf(parts.controllers, recipe.controllerId)];
  const only = Object.entries({ propeller, motor, controller }).flatMap(([kind, name]) =>
    name === undefined ? [] : [`the ${kind} “${name}”`],
  );
  if (only.length === 0) return null;
  const water = recipe.fluidAssumed ? `, in ${describeFluid(recipe.fluid)}` : "";
  return {
    title: propeller === undefined ? "Taken to be on the stand" : `Was “${propeller}” on the stand?`,
    sentence: `The log does not say what was on the stand, so ${joined(only)} ${only.length === 1 ? "was taken, the only one of its kind" : "were taken, the only ones of their kind"} in this project when the log came${water}.`,
    isPropeller: propeller !== undefined,
  };
}

interface Named {
  readonly id: string;
  readonly document: { readonly name: string };
}

/** The run without the propeller that was taken for it, nor the variant that came with it. */
export function withoutTakenPropeller(run: Run, propeller: Propeller): Run {
  const cleared = withPropeller(run, undefined);
  return run.variant === (propeller.finish ?? "") ? { ...cleared, variant: "" } : cleared;
}
