import { z } from "zod";
import { Name } from "../../shared/model/fields.ts";
import type { Recording } from "../../shared/model/recording.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { firstRun } from "../intake/firstRun.ts";
import { shortened } from "../intake/shortened.ts";
import type { Store } from "../store/store.ts";
import type { Recorder } from "./recorder.ts";

/** What a recording is begun with. */
export const RecordingStart = z
  .strictObject({
    name: Name.describe("What to call the run"),
    header: z
      .string()
      .trim()
      .max(4000)
      .exactOptional()
      .describe("Head of the columns, where the stand writes none; it becomes the first line of the log"),
  })
  .meta({ id: "RecordingStart" });
export type RecordingStart = z.infer<typeof RecordingStart>;

/** Recordings of a project that may stand open at a time: beyond, a program begins one after the other and ends none. */
const MOST_OPEN = 50;

/** Begins a recording, with what can be taken as likely of the stand. Throws InputProblem `recording.too-many-open`. */
export async function newRecording(
  { store, recorder }: { readonly store: Store; readonly recorder: Recorder },
  projectId: string,
  { name, header = "" }: RecordingStart,
): Promise<StoredDocument<Recording>> {
  const shelf = store.recordings(projectId);
  if (shelf.list().length >= MOST_OPEN) throw tooManyOpen();
  const fileName = fileNameOf(name);
  const recording = shelf.add({ ...firstRun(store, projectId, fileName, []).document, name, fileName });
  const log = await recorder.log(recording.id);
  if (header !== "") await log.append(new TextEncoder().encode(`${header}\n`));
  return recording;
}

/** The name as that of a file: without what a file system may not take. */
function fileNameOf(name: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  const plain = name.replace(/[\\/:*?"<>|\u0000-\u001f\u007f]+/g, " ").trim();
  return `${shortened(plain === "" ? "recording" : plain, 120)}.csv`;
}

function tooManyOpen(): InputProblem {
  return new InputProblem({
    code: "recording.too-many-open",
    where: "recordings",
    found: `${MOST_OPEN} recordings of this project stand open`,
    needed: "fewer",
    mend: "Keep them as runs or discard them first",
  });
}
