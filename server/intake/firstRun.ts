import { ASSUMED_FLUID } from "../../shared/bench/assumedFluid.ts";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { describeFluid } from "../../shared/fluid/parseFluid.ts";
import type { RoleGuess } from "../../shared/model/log.ts";
import type { PartKind, PartOf } from "../../shared/model/parts/partKinds.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";
import type { Store } from "../store/store.ts";

/** What is not known of a log when it arrives is taken as likely, and each taking is told. */
export interface FirstRun {
  readonly document: Omit<Run, "name" | "file">;
  readonly taken: readonly Warning[];
}

/** The first document of a run: roles as guessed, and of each kind of part the one there is, where there is one only. */
export function firstRun(store: Store, projectId: string, fileName: string, guesses: readonly RoleGuess[]): FirstRun {
  const propeller = onlyOne(store, projectId, "propellers");
  const motor = onlyOne(store, projectId, "motors");
  const controller = onlyOne(store, projectId, "controllers");
  const recipe = recipeFromGuesses({ guesses, polePairs: motor?.document.polePairs });
  const parts = [propeller, motor, controller].filter((part) => part !== undefined);
  const document = {
    ...(parts.length > 0 && { takenPartIds: parts.map(({ id }) => id) }),
    ...(propeller !== undefined && { propellerId: propeller.id }),
    variant: propeller?.document.finish ?? "",
    mounting: "",
    recipe: {
      ...recipe,
      ...(motor !== undefined && { motorId: motor.id }),
      ...(controller !== undefined && { controllerId: controller.id }),
    },
    purpose: "propeller" as const,
    confirmed: false,
    note: "",
  };
  const names = parts.map((part) => part.document.name);
  return { document, taken: [takenWater(fileName), ...(names.length > 0 ? [takenParts(fileName, names)] : [])] };
}

function onlyOne<K extends PartKind>(store: Store, projectId: string, kind: K): StoredDocument<PartOf[K]> | undefined {
  const parts = store.parts(projectId, kind).list();
  return parts.length === 1 ? parts[0] : undefined;
}

function takenWater(where: string): Warning {
  return warning({
    code: "intake.taken-water",
    where,
    found: `The log does not say what the propeller turned in; ${describeFluid(ASSUMED_FLUID)} was taken`,
    needed: "",
    mend: "Set the fluid and its temperature on the day of the test",
  });
}

function takenParts(where: string, names: readonly string[]): Warning {
  return warning({
    code: "intake.taken-parts",
    where,
    found: `The only parts of their kind in the project were taken to be on the stand: ${names.join("; ")}`,
    needed: "",
    mend: "Change them if others were",
  });
}
