import Database from "libsql";

export type SqlValue = string | number | null;
export type Row = Readonly<Record<string, unknown>>;

/** The few things the store asks of a database: small enough to stand in front of in a test. */
export interface Connection {
  /** Runs a statement that returns no rows; gives the number of rows it changed. */
  run(sql: string, ...values: SqlValue[]): number;
  /** Rows of a query, each a plain object by column name. */
  rows(sql: string, ...values: SqlValue[]): Row[];
  /** All statements of `action` or none of them. */
  transaction<T>(action: () => T): T;
  close(): void;
}

/** A connection to the database file at `path`, made if it is missing. Statements are prepared once. */
export function connect(path: string): Connection {
  const database = open(path);
  const prepared = new Map<string, Database.Statement<unknown[]>>();
  const statement = (sql: string) => {
    const known = prepared.get(sql) ?? database.prepare(sql);
    prepared.set(sql, known);
    return known;
  };
  return {
    run: (sql, ...values) => statement(sql).run(values).changes,
    // `all`, never `get`: single rows of this library carry an extra member with timings.
    rows: (sql, ...values) => statement(sql).all(values) as Row[],
    transaction: (action) => transaction(database, action),
    close: () => close(database),
  };
}

function open(path: string): Database.Database {
  try {
    // No waiting for a lock: whoever holds it keeps it as long as it lives.
    return new Database(path, { timeout: 0 });
  } catch (reason) {
    // The one failure that the library tells without a code.
    throw Object.assign(new Error(`${path} can not be opened`, { cause: reason }), { code: "SQLITE_CANTOPEN" });
  }
}

/**
 * The library lets go of the file only when its statements are collected as garbage, and with it of the lock.
 * Leaving write-ahead mode writes everything into the one file and makes the lock one that can be given back at once.
 */
function close(database: Database.Database): void {
  try {
    for (const step of ["journal_mode = DELETE", "locking_mode = NORMAL", "user_version"]) database.pragma(step);
  } catch {
    // A full or read-only disk: what was written stays in both files, and the lock ends with the process.
  }
  database.close();
}

/** The library's own wrapper rolls back even where the database has done so already, and hides why it failed. */
function transaction<T>(database: Database.Database, action: () => T): T {
  if (database.inTransaction) return action();
  database.exec("BEGIN IMMEDIATE");
  try {
    const outcome = action();
    database.exec("COMMIT");
    return outcome;
  } catch (reason) {
    if (database.inTransaction) database.exec("ROLLBACK");
    throw reason;
  }
}
