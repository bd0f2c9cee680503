import { editRun } from "../../app/edits.ts";

/** Gives a run another variant; an empty name takes it out of the comparison. */
export function moveRun({ id, name }: { readonly id: string; readonly name: string }, to: string): Promise<boolean> {
  return editRun(id, to === "" ? `Took ${name} out of its variant` : `Moved ${name} to “${to}”`, (run) => ({
    ...run,
    variant: to,
  }));
}
