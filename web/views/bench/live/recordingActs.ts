import type { Recording, StoredRecording } from "../../../../shared/model/recording.ts";
import * as api from "../../../api/recordings.ts";
import { settlingConflict } from "../../../app/conflict.ts";
import { addRun } from "../../../app/edits.ts";
import { noteChoice } from "../../../app/route.ts";
import { openProjectId } from "../../../app/session.ts";
import { act, forgetActsAbout } from "../../../app/undo.ts";
import { answering, drop, finishing, keep, leaving, loadRecordings, named } from "./liveState.ts";
import { unlinkPort } from "./portLink.ts";
import { closeLine, sent } from "./sending.ts";

/** Begins a recording and shows it; undone by discarding it. Resolves to null where it was refused. */
export async function begin(name: string, header: string): Promise<StoredRecording | null> {
  let made: StoredRecording | null = null;
  await act({
    label: `Began to record ${name}`,
    get about() {
      return made?.id;
    },
    run: async () => {
      if (made) return bringBack(made.id);
      made = await api.beginRecording(openProjectId(), { name, ...(header.trim() !== "" && { header }) });
      keep(made);
    },
    undo: () => takeAway(made!.id),
  });
  if (made) noteChoice("run", (made as StoredRecording).id);
  return made;
}

/** Puts a recording away; undone by bringing it back. */
export function discard(id: string): Promise<boolean> {
  const { name } = named(id).document;
  return act({
    label: `Discarded the recording ${name}`,
    about: id,
    run: () => takeAway(id),
    undo: () => bringBack(id),
  });
}

async function takeAway(id: string): Promise<void> {
  unlinkPort(id);
  if (answering.peek()) await sent(id);
  const { version, document } = named(id);
  const write = (version: number) => api.discardRecording(openProjectId(), id, version);
  const load = () => loadRecordings(openProjectId());
  leaving.add(id);
  try {
    await settlingConflict({ what: document.name, version, write, load });
    drop(id);
    await closeLine(id);
  } finally {
    leaving.delete(id);
  }
}

async function bringBack(id: string): Promise<void> {
  keep(await api.restoreRecording(openProjectId(), id));
}

/** Stores what is stated of a recording; undone by storing what was stated before. */
export function editRecording(id: string, label: string, change: (document: Recording) => Recording): Promise<boolean> {
  let before: Recording | null = null;
  let after: Recording | null = null;
  const write = async (document: Recording) => {
    const { version } = named(id);
    const save = (version: number) => api.saveRecording(openProjectId(), id, version, document);
    const load = () => loadRecordings(openProjectId());
    keep(await settlingConflict({ what: document.name, version, write: save, load }));
  };
  return act({
    label,
    about: id,
    run: () => {
      before ??= named(id).document;
      after ??= change(before);
      return write(after);
    },
    undo: () => write(before!),
  });
}

/** Lets the port go, waits for the last lines, and makes the recording a run, which is then on show. */
export async function keepAsRun(id: string): Promise<void> {
  const { name } = named(id).document;
  finishing.value = id;
  leaving.add(id);
  unlinkPort(id);
  await sent(id);
  const made = await addRun(name, () => api.endRecording(openProjectId(), id));
  finishing.value = null;
  leaving.delete(id);
  if (made === null) return;
  drop(id);
  noteChoice("run", made.run.id);
  forgetActsAbout(id);
  await closeLine(id);
}
