import { InputProblem } from "../../shared/quantity/problem.ts";
import { type MeantFile, openFile } from "../intake/openFile.ts";

/** The text of a file that the words name. Throws InputProblem `intake.unreadable`. */
export async function textOfFile(path: string, meant: MeantFile): Promise<string> {
  const file = await openFile(path, meant);
  try {
    return await file.readFile("utf8");
  } finally {
    await file.close();
  }
}

/** The JSON document in it. Throws InputProblem `intake.unreadable` or `cli.not-json`. */
export async function jsonOfFile(path: string, meant: MeantFile): Promise<unknown> {
  const text = await textOfFile(path, meant);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new InputProblem({
      code: "cli.not-json",
      ...meant,
      found: `this is not complete JSON: ${(error as Error).message}`,
      mend: "Check commas, quotes and brackets near there",
    });
  }
}

/** Says what is wrong with a file that is read later on, or in parts. Throws InputProblem `intake.unreadable`. */
export async function requireFile(path: string, meant: MeantFile): Promise<void> {
  await (await openFile(path, meant)).close();
}
