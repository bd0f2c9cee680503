import type { PartKind, PartOf } from "../../shared/model/parts/partKinds.ts";
import type { PartsTableRequest } from "../../shared/model/partsTable.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import * as api from "../api/client.ts";
import { settlingConflict } from "./conflict.ts";
import {
  dropPart,
  dropRun,
  keepPart,
  keepProject,
  keepRun,
  openProjectId,
  partOf,
  project,
  reloadParts,
  reloadProject,
  reloadRuns,
  runs,
} from "./session.ts";
import { act } from "./undo.ts";

interface EditOptions {
  /** No message after it, for changes that show by themselves. */
  readonly quiet?: boolean;
}

/** Stores a changed run; undone by storing the one before. Resolves to false where it could not be stored. */
export function editRun(
  id: string,
  label: string,
  change: (run: Run) => Run,
  options: EditOptions = {},
): Promise<boolean> {
  return editDocument({
    label,
    change,
    find: () => runNamed(id),
    write: (document) => writeRun(id, document),
    options,
  });
}

/** Puts a run away; undone by bringing it back. */
export function removeRun(id: string): Promise<boolean> {
  const name = runNamed(id).document.name;
  return act({ label: `Deleted ${name}`, run: () => takeRun(id), undo: () => bringRunBack(id) });
}

/** Keeps a new run that `make` uploads; undone by putting it away. Resolves to null where it was refused. */
export async function addRun(name: string, make: () => Promise<api.NewRun>): Promise<api.NewRun | null> {
  let made: api.NewRun | null = null;
  await act({
    label: `Added ${name}`,
    run: async () => {
      if (made) return bringRunBack(made.run.id);
      made = await make();
      keepRun(made.run);
    },
    undo: () => takeRun(made!.run.id),
  });
  return made;
}

/** Imports a table of parts in one act; undone by putting the new ones away and storing the others as they were. */
export function importParts<K extends PartKind>(kind: K, label: string, request: PartsTableRequest): Promise<boolean> {
  let done: api.ImportedParts<K> | null = null;
  type Stored = api.StoredParts[K][number];
  const write = (id: string, document: PartOf[K]) => writePart(kind, id, document as api.PartInput<K>);
  return act({
    label,
    run: async () => {
      if (done) {
        for (const { id } of done.added) await bringPartBack(kind, id);
        for (const { after } of done.changed) await write(after.id, after.document);
        return;
      }
      done = await api.importParts(openProjectId(), kind, request);
      for (const part of [...done.added, ...done.changed.map(({ after }) => after)]) keepPart(kind, part as Stored);
    },
    undo: async () => {
      for (const { before } of done!.changed) await write(before.id, before.document);
      for (const { id } of done!.added) await takePart(kind, id);
    },
  });
}

/** Adds a part; undone by putting it away. */
export function addPart<K extends PartKind>(kind: K, document: api.PartInput<K>): Promise<boolean> {
  let id: string | null = null;
  return act({
    label: `Added ${document.name}`,
    run: async () => {
      if (id) return bringPartBack(kind, id);
      const stored = await api.addPart(openProjectId(), kind, document);
      id = stored.id;
      keepPart(kind, stored as api.StoredParts[K][number]);
    },
    undo: () => takePart(kind, id!),
  });
}

/** Stores a changed part; undone by storing the one before. */
export function editPart<K extends PartKind>(kind: K, id: string, document: api.PartInput<K>): Promise<boolean> {
  return editDocument<api.PartInput<K>>({
    label: `Changed ${document.name}`,
    change: () => document,
    find: () => partNamed(kind, id) as unknown as StoredDocument<api.PartInput<K>>,
    write: (changed) => writePart(kind, id, changed),
    options: {},
  });
}

/** Puts a part away; undone by bringing it back. */
export function removePart(kind: PartKind, id: string): Promise<boolean> {
  const { name } = partNamed(kind, id).document;
  return act({ label: `Deleted ${name}`, run: () => takePart(kind, id), undo: () => bringPartBack(kind, id) });
}

/** Stores the changed project; undone by storing the one before. */
export function editProject(
  label: string,
  change: (project: Project) => Project,
  options: EditOptions = {},
): Promise<boolean> {
  return editDocument({ label, change, find: () => project.value!, write: writeProject, options });
}

async function editDocument<T>({
  label,
  change,
  find,
  write,
  options,
}: {
  label: string;
  change: (document: T) => T;
  find: () => StoredDocument<T>;
  write: (document: T) => Promise<void>;
  options: EditOptions;
}): Promise<boolean> {
  let before: T | null = null;
  let after: T | null = null;
  return act(
    {
      label,
      // A field that is left right after Enter asks for the same change twice.
      isNeeded: () => {
        before = find().document;
        after = change(before);
        return JSON.stringify(before) !== JSON.stringify(after);
      },
      run: () => write(after!),
      undo: () => write(before!),
    },
    options,
  );
}

async function writeRun(id: string, document: Run): Promise<void> {
  const { version } = runNamed(id);
  const write = (named: number) => api.saveRun(openProjectId(), id, named, document);
  keepRun(await settlingConflict({ what: document.name, version, write, load: reloadRuns }));
}

async function takeRun(id: string): Promise<void> {
  const { version, document } = runNamed(id);
  const write = (named: number) => api.deleteRun(openProjectId(), id, named);
  await settlingConflict({ what: document.name, version, write, load: reloadRuns });
  dropRun(id);
}

async function bringRunBack(id: string): Promise<void> {
  keepRun(await api.restoreRun(openProjectId(), id));
}

async function writePart<K extends PartKind>(kind: K, id: string, document: api.PartInput<K>): Promise<void> {
  const { version } = partNamed(kind, id);
  const write = (named: number) => api.savePart(openProjectId(), kind, id, named, document);
  const stored = await settlingConflict({ what: document.name, version, write, load: reloadParts });
  keepPart(kind, stored as api.StoredParts[K][number]);
}

async function takePart(kind: PartKind, id: string): Promise<void> {
  const { version, document } = partNamed(kind, id);
  const write = (named: number) => api.deletePart(openProjectId(), kind, id, named);
  await settlingConflict({ what: document.name, version, write, load: reloadParts });
  dropPart(kind, id);
}

async function bringPartBack<K extends PartKind>(kind: K, id: string): Promise<void> {
  keepPart(kind, (await api.restorePart(openProjectId(), kind, id)) as api.StoredParts[K][number]);
}

async function writeProject(document: Project): Promise<void> {
  const { version } = project.value!;
  const write = (named: number) => api.saveProject(openProjectId(), named, document);
  keepProject(await settlingConflict({ what: document.name, version, write, load: reloadProject }));
}

function runNamed(id: string): StoredDocument<Run> {
  const found = runs.value.find((run) => run.id === id);
  if (!found) throw new Error("This run is no longer in the project; another tab may have deleted it.");
  return found;
}

function partNamed<K extends PartKind>(kind: K, id: string): StoredDocument<PartOf[K]> {
  const found = partOf(kind, id);
  if (!found) throw new Error("This part is no longer in the project; another tab may have deleted it.");
  return found as StoredDocument<PartOf[K]>;
}
