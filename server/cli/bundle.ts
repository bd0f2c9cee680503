import { createReadStream, createWriteStream } from "node:fs";
import { rename, rm, stat } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { OpenedBundle } from "../../shared/model/bundle.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { chosenProject, PROJECT_OPTION, WORKBENCH_OPTION, workbenchApi } from "./chosenProject.ts";
import { requireFile } from "./namedFile.ts";
import type { Usage, Words } from "./options.ts";
import { download, sendFile } from "./workbenchCalls.ts";

export const USAGE: Usage = {
  verb: "bundle",
  arguments: "save|open FILE",
  about:
    "Saves a project of the workbench that runs as one file, with every log, part, run and kept shortlist, or makes a\nproject of such a file. Every byte is checked when it is opened; a file that is damaged or was changed is refused.",
  options: {
    ...WORKBENCH_OPTION,
    ...PROJECT_OPTION,
    overwrite: { text: "save over a file that is there" },
    json: { text: "print what was opened as JSON" },
  },
  examples: ["bundle save dabchick.zip --project Dabchick", "bundle open dabchick.zip"],
};

export async function run(words: Words): Promise<number> {
  const [act, file, ...more] = words.rest;
  if (file === undefined || more.length > 0 || (act !== "save" && act !== "open")) {
    throw new InputProblem({
      code: "cli.not-one-of",
      where: "bundle",
      found: words.rest.length === 0 ? "nothing was named" : `"${words.rest.join(" ")}" is not understood`,
      needed: "save or open, and one file",
      mend: "For example: bundle save dabchick.zip",
    });
  }
  process.stdout.write(act === "save" ? await save(words, resolve(file)) : await open(words, resolve(file)));
  return 0;
}

/** Written beside and renamed when it is whole, so that half a project never has the name of a whole one. */
async function save(words: Words, path: string): Promise<string> {
  if (!words.has("overwrite") && (await stat(path).catch(() => null)) !== null) throw isThere(path);
  const { name, address } = await chosenProject(words);
  const unfinished = `${path}.unfinished`;
  try {
    const body = await download(`${address}/bundle`);
    await pipeline(body, createWriteStream(unfinished)).catch(() => {
      throw notWritten(path);
    });
    await rename(unfinished, path);
  } finally {
    await rm(unfinished, { force: true });
  }
  return `${name} is saved in ${path}, ${(await stat(path)).size} bytes.\n`;
}

async function open(words: Words, path: string): Promise<string> {
  await requireFile(path, { where: path, needed: "a file that a project was saved as" });
  const stream = Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>;
  const opened = await sendFile<OpenedBundle>(`${workbenchApi(words)}/bundles`, { name: basename(path), stream });
  if (words.has("json")) return `${JSON.stringify(opened, null, 2)}\n`;
  const { project, counts, warnings, notIncluded } = opened;
  const left =
    notIncluded.length === 0 ? "" : `Not in the file, as they were still running: ${notIncluded.join(", ")}.\n`;
  const notes = warnings.map(({ message }) => `${message}\n`).join("");
  return `${project.document.name} is a project now: ${counts.runs} runs, ${counts.parts} parts, ${counts.shortlists} kept shortlists, ${counts.files} files.\n${left}${notes}`;
}

function isThere(where: string): InputProblem {
  return new InputProblem({
    code: "cli.not-written",
    where,
    found: "A file of this name is there",
    needed: "a new name",
    mend: "Choose another name, or give --overwrite",
  });
}

function notWritten(where: string): InputProblem {
  return new InputProblem({
    code: "cli.not-written",
    where,
    found: "The project did not come whole, or the file can not be written",
    needed: "a folder that can be written in, and a workbench that runs on",
    mend: "Look at both and try again; no half file was left",
  });
}
