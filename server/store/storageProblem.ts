import { InputProblem } from "../../shared/quantity/problem.ts";

const NOTHING_CHANGED = "What was stored before is still there";

const PROBLEMS = {
  "store.full": {
    found: "The disk is full, or a quota is used up",
    needed: "free space",
    mend: `Make room and try again. ${NOTHING_CHANGED}`,
  },
  "store.read-only": {
    found: "It can not be written to",
    needed: "permission to write in the folder and its files",
    mend: `Give permission, or choose another folder with --data. ${NOTHING_CHANGED}`,
  },
  "store.damaged": {
    found: "The file bollard.sqlite is damaged or is no database",
    needed: "the file as the workbench wrote it",
    mend: "Put back a copy of the folder, or choose another folder with --data. Nothing was changed",
  },
  "store.file-missing": {
    found: "A file that was kept is no longer there",
    needed: "the folder as the workbench left it",
    mend: "Put back the file from a copy of the folder",
  },
  "store.unusable": {
    found: "It can not be used as a folder, or the disk under it failed",
    needed: "a folder on a working disk",
    mend: `Look at the path and the disk, or choose another folder with --data. ${NOTHING_CHANGED}`,
  },
} as const;

export type StorageCode = keyof typeof PROBLEMS;

/** Codes of the database and of the operating system, by what they mean to a person. */
const CAUSES: readonly (readonly [RegExp, StorageCode])[] = [
  [/^(SQLITE_FULL|ENOSPC|EDQUOT|EFBIG)/, "store.full"],
  [/^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM|EROFS|EACCES|EPERM)/, "store.read-only"],
  [/^(SQLITE_NOTADB|SQLITE_CORRUPT)/, "store.damaged"],
  [/^ENOENT/, "store.file-missing"],
  [/^(SQLITE_IOERR|EIO|ENOTDIR|EEXIST|EISDIR)/, "store.unusable"],
];

/** What a failed read or write of the data folder means, or undefined if it is something else. */
export function storageProblem(reason: unknown): InputProblem | undefined {
  const code = reason instanceof Error && "code" in reason ? String(reason.code) : "";
  const cause = CAUSES.find(([pattern]) => pattern.test(code))?.[1];
  return cause && new InputProblem({ code: cause, where: "Data folder", ...PROBLEMS[cause] });
}
