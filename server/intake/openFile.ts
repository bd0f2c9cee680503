import { type FileHandle, open } from "node:fs/promises";
import { InputProblem } from "../../shared/quantity/problem.ts";

/** What a person meant by a file, for when it can not be read. */
export interface MeantFile {
  /** Where the name was given, e.g. "--train drive.json". */
  readonly where: string;
  /** What it should hold, e.g. "a log". */
  readonly needed: string;
}

/** Opens a file to read it. Throws InputProblem `intake.unreadable` where there is none, or it may not be read. */
export async function openFile(path: string, meant: MeantFile): Promise<FileHandle> {
  try {
    const file = await open(path, "r");
    if ((await file.stat()).isFile()) return file;
    await file.close();
    throw Object.assign(new Error("not a file"), { code: "EISDIR" });
  } catch (error) {
    const { code = "", message } = error as NodeJS.ErrnoException;
    throw new InputProblem({
      code: "intake.unreadable",
      ...meant,
      found: REASONS[code] ?? message,
      mend: "Check the name, the folder it is in, and the permissions",
    });
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no file of this name",
  ENOTDIR: "there is no file of this name: part of the path is a file, not a folder",
  EACCES: "this file may not be read by you",
  EPERM: "this file may not be read by you",
  EISDIR: "this is a folder, not a file",
};
