import { accessSync, constants, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { type Connection, connect } from "./connection.ts";
import { FileVault } from "./fileVault.ts";
import { prepareSchema } from "./schema.ts";
import { storageProblem } from "./storageProblem.ts";
import { Store } from "./store.ts";

/**
 * Opens the data folder for this process alone, making it if it is missing.
 *
 * Throws   InputProblem `store.in-use`, `store.newer`, `store.foreign`, `store.damaged`, `store.read-only` or
 *          `store.full`, told from the folder; the folder is then as it was.
 */
export async function openStore(folder: string, now?: () => Date): Promise<Store> {
  let connection: Connection | undefined;
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.R_OK | constants.W_OK);
    connection = connect(join(folder, "bollard.sqlite"));
    prepareSchema(connection);
    writeOwner(folder);
    // After the lock: a second server must not sweep away what the first is receiving.
    return new Store(connection, await FileVault.open(folder), now);
  } catch (reason) {
    connection?.close();
    throw told(folder, reason);
  }
}

/** Who holds the folder, only to be named in a sentence: the lock itself is the operating system's. */
const ownerFile = (folder: string) => join(folder, "owner.json");

function writeOwner(folder: string): void {
  writeFileSync(ownerFile(folder), `${JSON.stringify({ process: process.pid })}\n`);
}

function owner(folder: string): string {
  try {
    return ` (process ${Number(JSON.parse(readFileSync(ownerFile(folder), "utf8")).process)})`;
  } catch {
    return "";
  }
}

function told(folder: string, reason: unknown): unknown {
  const code = reason instanceof Error && "code" in reason ? String(reason.code) : "";
  if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) return inUse(folder);
  const problem = reason instanceof InputProblem ? reason : storageProblem(reason);
  return problem?.at(`Data folder ${folder}`) ?? reason;
}

function inUse(folder: string): InputProblem {
  return new InputProblem({
    code: "store.in-use",
    where: `Data folder ${folder}`,
    found: `Another workbench${owner(folder)} is working on it`,
    needed: "a folder for each workbench",
    mend: "Use the one that runs, stop it, or choose another folder with --data. Nothing was changed",
  });
}
