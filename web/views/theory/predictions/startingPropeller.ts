import { partOf, parts } from "../../../app/session.ts";
import { groups } from "../../variants/variantsState.ts";
import type { StartingPropeller } from "./predictionDraft.ts";

/** The propeller a new prediction starts from: the first that was measured, else the first of the parts. */
export function startingPropeller(): StartingPropeller | null {
  const measured = groups.value
    .flatMap(({ members }) => members.map(({ run }) => partOf("propellers", run.propellerId)))
    .find((part) => part !== undefined);
  const part = measured ?? parts.value.propellers[0];
  return part === undefined ? null : { id: part.id, ...part.document };
}
