import type { LogTable } from "../../shared/log/logTable.ts";
import type { LogFile } from "./jobs.ts";

/** What a table depends on: the bytes, and what a person decided about their text. */
export function tableKey({ sha256, reading }: Pick<LogFile, "sha256" | "reading">): string {
  const stated = Object.entries(reading ?? {}).sort(([a], [b]) => (a < b ? -1 : 1));
  return stated.length === 0 ? sha256 : `${sha256} ${JSON.stringify(stated)}`;
}

/** Bytes that a table holds in its columns and line numbers; the rest of it is small. */
export function tableBytes({ columns, lineNumbers }: LogTable): number {
  return columns.reduce((sum, column) => sum + column.byteLength, lineNumbers.byteLength);
}

/** Bytes set aside for a table: its arrays may be parts of longer ones whose rest was never written. */
export function arrayBytes({ columns, lineNumbers }: LogTable): number {
  const buffers = new Set([...columns, lineNumbers].map(({ buffer }) => buffer));
  return [...buffers].reduce((sum, { byteLength }) => sum + byteLength, 0);
}

/**
 * Tables that were read lately, by their `tableKey`, so that an edit does not read the file again.
 * The least lately used go first when together they exceed `budget` bytes. One larger than that is kept alone, until the
 * next table is read.
 */
export class TableCache {
  private readonly tables = new Map<string, LogTable>();
  private held = 0;

  constructor(private readonly budget: number) {}

  get(key: string): LogTable | undefined {
    const table = this.tables.get(key);
    // A map keeps the order of insertion: taking out and putting back makes this the latest.
    if (table !== undefined) this.tables.delete(key) && this.tables.set(key, table);
    return table;
  }

  put(key: string, table: LogTable): void {
    this.drop(key);
    this.tables.set(key, table);
    this.held += tableBytes(table);
    for (const oldest of this.tables.keys()) {
      if (this.held <= this.budget || this.tables.size === 1) return;
      this.drop(oldest);
    }
  }

  /** Lets the least lately used go until `bytes` more fit, or nothing is left: a long table must not be read beside others. */
  makeRoom(bytes: number): void {
    for (const oldest of this.tables.keys()) {
      if (this.held + bytes <= this.budget) return;
      this.drop(oldest);
    }
  }

  private drop(key: string): void {
    const table = this.tables.get(key);
    if (table === undefined) return;
    this.held -= tableBytes(table);
    this.tables.delete(key);
  }
}
