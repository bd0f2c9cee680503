import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Connection } from "./connection.ts";

/** Written into the file's head, so that another program's database is never taken for ours ("BoBe"). */
const APPLICATION_ID = 0x426f4265;

const documentColumns = `
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  id TEXT NOT NULL UNIQUE,
  version INTEGER NOT NULL,
  updated_at TEXT NOT NULL,
  deleted_at TEXT,
  document TEXT NOT NULL`;

/** Step `i` brings a database of version `i` to version `i + 1`. Steps are never edited, only added. */
const STEPS: readonly (readonly string[])[] = [
  [
    `CREATE TABLE projects (${documentColumns})`,
    `CREATE TABLE parts (${documentColumns},
       project_id TEXT NOT NULL REFERENCES projects (id), kind TEXT NOT NULL)`,
    "CREATE INDEX parts_of_project ON parts (project_id, kind)",
    "CREATE TABLE files (sha256 TEXT PRIMARY KEY, size INTEGER NOT NULL, received_at TEXT NOT NULL)",
    `CREATE TABLE runs (${documentColumns},
       project_id TEXT NOT NULL REFERENCES projects (id), sha256 TEXT NOT NULL REFERENCES files (sha256))`,
    "CREATE INDEX runs_of_project ON runs (project_id)",
  ],
  [
    `CREATE TABLE recordings (${documentColumns}, project_id TEXT NOT NULL REFERENCES projects (id))`,
    "CREATE INDEX recordings_of_project ON recordings (project_id)",
  ],
  [
    `CREATE TABLE shortlists (${documentColumns}, project_id TEXT NOT NULL REFERENCES projects (id))`,
    "CREATE INDEX shortlists_of_project ON shortlists (project_id)",
  ],
];

/** The version of the database this program writes. */
const SCHEMA_VERSION = STEPS.length;

/**
 * Takes the database for this process alone, refuses one it does not understand, and brings an older one up to date.
 * Throws InputProblem `store.newer` or `store.foreign` before anything is written.
 */
export function prepareSchema(connection: Connection): void {
  // Exclusive: a second server is refused by the operating system, and the lock ends with the process, even a killed one.
  connection.rows("PRAGMA locking_mode = EXCLUSIVE");
  const version = pragma(connection, "user_version");
  const application = pragma(connection, "application_id");
  if (version > SCHEMA_VERSION) throw newerDatabase(version);
  if (application !== APPLICATION_ID && !isEmpty(connection)) throw foreignDatabase();
  connection.rows("PRAGMA journal_mode = WAL");
  connection.rows("PRAGMA synchronous = FULL");
  connection.rows("PRAGMA foreign_keys = ON");
  connection.transaction(() => {
    for (const statement of STEPS.slice(version).flat()) connection.run(statement);
    connection.rows(`PRAGMA application_id = ${APPLICATION_ID}`);
    connection.rows(`PRAGMA user_version = ${SCHEMA_VERSION}`);
  });
}

function pragma(connection: Connection, name: string): number {
  return Number(connection.rows(`PRAGMA ${name}`)[0]?.[name] ?? 0);
}

function isEmpty(connection: Connection): boolean {
  return connection.rows("SELECT name FROM sqlite_schema LIMIT 1").length === 0;
}

function newerDatabase(version: number): InputProblem {
  return new InputProblem({
    code: "store.newer",
    where: "",
    found: `The data folder was written by a newer Bollard Bench (data version ${version})`,
    needed: `data version ${SCHEMA_VERSION} or older`,
    mend: "Start the newer program, or choose another folder with --data. Nothing was changed",
  });
}

function foreignDatabase(): InputProblem {
  return new InputProblem({
    code: "store.foreign",
    where: "",
    found: "The file bollard.sqlite in the data folder belongs to another program",
    needed: "a folder of Bollard Bench or an empty one",
    mend: "Choose another folder with --data. Nothing was changed",
  });
}
