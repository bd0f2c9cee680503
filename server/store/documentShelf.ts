import { randomUUID } from "node:crypto";
import type { StoredDocument } from "../../shared/model/stored.ts";
import type { Connection, Row, SqlValue } from "./connection.ts";
import { NothingThere, StaleVersion } from "./refusals.ts";

/** Where the documents of a shelf stand: a table, and the values of its columns that all of them share. */
export interface Place<T> {
  readonly table: "projects" | "parts" | "runs" | "recordings" | "shortlists";
  /** What one of them is called in a sentence. */
  readonly kind: string;
  readonly owner: Readonly<Record<string, string>>;
  /** Columns that are read out of a new document, for the database to check. */
  readonly indexed?: (document: T) => Readonly<Record<string, SqlValue>>;
}

/**
 * Documents of one kind in one project. Every write names the version it changes and is refused if another came before;
 * a deleted document stays in the table and can be restored.
 */
export class DocumentShelf<T> {
  private readonly where: string;
  private readonly ownerValues: readonly string[];

  constructor(
    private readonly connection: Connection,
    private readonly now: () => Date,
    private readonly place: Place<T>,
  ) {
    this.where = ["1", ...Object.keys(place.owner).map((column) => `${column} = ?`)].join(" AND ");
    this.ownerValues = Object.values(place.owner);
  }

  /** All that are not deleted, oldest first. */
  list(): StoredDocument<T>[] {
    const sql = `SELECT * FROM ${this.place.table} WHERE ${this.where} AND deleted_at IS NULL ORDER BY sequence`;
    return this.connection.rows(sql, ...this.ownerValues).map((row) => stored<T>(row));
  }

  /** One that is not deleted. Throws NothingThere. */
  find(id: string): StoredDocument<T> {
    const row = this.row(id);
    if (row === undefined || row["deleted_at"] !== null) throw new NothingThere(this.place.kind, id);
    return stored<T>(row);
  }

  has(id: string): boolean {
    return this.row(id)?.["deleted_at"] === null;
  }

  /** Puts a new document on the shelf, under an id that no other of its table has. */
  add(document: T, id: string = randomUUID()): StoredDocument<T> {
    const columns: Record<string, SqlValue> = {
      id,
      version: 1,
      updated_at: this.now().toISOString(),
      document: JSON.stringify(document),
      ...this.place.owner,
      ...this.place.indexed?.(document),
    };
    const marks = Object.keys(columns).map(() => "?");
    const sql = `INSERT INTO ${this.place.table} (${Object.keys(columns).join(", ")}) VALUES (${marks.join(", ")})`;
    this.connection.run(sql, ...Object.values(columns));
    return this.find(id);
  }

  /** Puts `document` in the place of version `version`. Throws NothingThere or StaleVersion. */
  write(id: string, version: number, document: T): StoredDocument<T> {
    this.change(id, version, "document = ?", JSON.stringify(document));
    return this.find(id);
  }

  /** Deletes version `version` so that it can be restored. Throws NothingThere or StaleVersion. */
  remove(id: string, version: number): void {
    this.change(id, version, "deleted_at = ?", this.now().toISOString());
  }

  /** Takes back a deletion; one that is not deleted is returned as it is. */
  restore(id: string): StoredDocument<T> {
    const sql = `UPDATE ${this.place.table} SET deleted_at = NULL, version = version + 1, updated_at = ?
      WHERE ${this.where} AND id = ? AND deleted_at IS NOT NULL`;
    this.connection.run(sql, this.now().toISOString(), ...this.ownerValues, id);
    return this.find(id);
  }

  /** True if nothing was ever put here, deleted or not. */
  neverUsed(): boolean {
    const sql = `SELECT id FROM ${this.place.table} WHERE ${this.where} LIMIT 1`;
    return this.connection.rows(sql, ...this.ownerValues).length === 0;
  }

  private row(id: string): Row | undefined {
    const sql = `SELECT * FROM ${this.place.table} WHERE ${this.where} AND id = ?`;
    return this.connection.rows(sql, ...this.ownerValues, id)[0];
  }

  /** One statement finds and changes, so that two writers can not both succeed from the same version. */
  private change(id: string, version: number, assignment: string, value: SqlValue): void {
    const sql = `UPDATE ${this.place.table} SET ${assignment}, version = version + 1, updated_at = ?
      WHERE ${this.where} AND id = ? AND version = ? AND deleted_at IS NULL`;
    const changed = this.connection.run(sql, value, this.now().toISOString(), ...this.ownerValues, id, version);
    if (changed === 0) throw new StaleVersion(this.place.kind, id, version, this.find(id).version);
  }
}

function stored<T>(row: Row): StoredDocument<T> {
  return {
    id: String(row["id"]),
    version: Number(row["version"]),
    updatedAt: String(row["updated_at"]),
    document: JSON.parse(String(row["document"])) as T,
  };
}
