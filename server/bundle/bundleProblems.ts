import { InputProblem } from "../../shared/quantity/problem.ts";

const NOTHING_KEPT = "Nothing of it was kept";

const say = (
  code: string,
  words: { readonly where?: string; readonly found: string; readonly needed: string; readonly mend?: string },
) =>
  new InputProblem({
    code,
    where: words.where ?? "Project file",
    found: words.found,
    needed: words.needed,
    mend: [words.mend, NOTHING_KEPT].filter((part) => part !== undefined).join(". "),
  });

export const notZip = () =>
  say("bundle.not-a-project", {
    found: "This is not a project file of the workbench",
    needed: "a file that was made with “Save the project as one file”",
  });

export const damaged = (where = "Project file") =>
  say("bundle.damaged", {
    where,
    found: "The project file is damaged or was cut short",
    needed: "the file as the workbench wrote it",
    mend: "Copy it again from where it came from",
  });

export const newer = (version: unknown, known: number) =>
  say("bundle.newer", {
    found: `The project file was written by a newer Bollard Bench (format ${String(version).slice(0, 20)})`,
    needed: `format ${known} or older`,
    mend: "Open it with the newer program",
  });

export const unsafeName = (name: string) =>
  say("bundle.unsafe-name", {
    found: `It holds an entry called “${name.slice(0, 80)}”, which no project file holds`,
    needed: "the entries of a project alone",
    mend: "Someone changed the file; do not trust it",
  });

export const twice = (name: string) =>
  say("bundle.name-twice", {
    found: `It holds two entries called “${name}”`,
    needed: "each name once",
    mend: "Someone changed the file; do not trust it",
  });

export const notListed = (name: string) =>
  say("bundle.not-listed", {
    found: `The entry ${name} is not in the list of contents`,
    needed: "a list that names every entry",
    mend: "Someone changed the file; do not trust it",
  });

export const missing = (name: string) =>
  say("bundle.missing-entry", {
    found: `The entry ${name} is not there`,
    needed: "everything that a document of the project rests on",
    mend: "Copy the file again from where it came from",
  });

export const otherBytes = (name: string) =>
  say("bundle.other-bytes", {
    where: name,
    found: "Its bytes are not those that were saved: the SHA-256 or the size is another",
    needed: "the bytes as the workbench wrote them",
    mend: "Copy the file again from where it came from",
  });

export const unfitDocument = (name: string, found: string) =>
  say("bundle.unfit-document", {
    where: name,
    found,
    needed: "a document as the workbench keeps it",
    mend: "Save the project again with the program that made it",
  });

export const tooLarge = (found: string, needed: string) => say("bundle.too-large", { found, needed });
