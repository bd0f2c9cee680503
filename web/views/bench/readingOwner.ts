import type { LogReading } from "../../../shared/model/reading.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun } from "../../app/edits.ts";
import type { ReadAs } from "./readingModel.ts";

/** Changes how a text is read, whichever document keeps it. */
export type ReadingEdit = <T extends ReadAs>(kept: T) => T;

/** Where it is kept how a text is read, and how to change it there. */
export interface ReadingOwner {
  readonly reading: LogReading | undefined;
  /** Switches a repair: the columns stay what they are. */
  readonly repair: (label: string, edit: ReadingEdit) => Promise<unknown>;
  /** Reads the text into other columns, perhaps: a person looks at them again. */
  readonly restate: (label: string, edit: ReadingEdit) => Promise<unknown>;
}

export function readingOfRun({ id, document }: StoredDocument<Run>): ReadingOwner {
  const edit = (label: string, change: ReadingEdit, more: Partial<Run> = {}) =>
    editRun(id, label, (now) => ({ ...now, ...more, recipe: change(now.recipe) }));
  return {
    reading: document.recipe.reading,
    repair: edit,
    restate: (label, change) => edit(label, change, { confirmed: false }),
  };
}

/** Of the electrical log of a run. */
export function readingOfCompanion({ id, document }: StoredDocument<Run>): ReadingOwner {
  const edit = (label: string, change: ReadingEdit) =>
    editRun(id, label, ({ companion, ...now }) => (companion ? { ...now, companion: change(companion) } : now));
  return { reading: document.companion?.reading, repair: edit, restate: edit };
}
