import type { LogTable } from "../../shared/log/logTable.ts";

/** Bytes that a table holds in its columns and line numbers; the rest of it is small. */
export function tableBytes({ columns, lineNumbers }: LogTable): number {
  return columns.reduce((sum, column) => sum + column.byteLength, lineNumbers.byteLength);
}

/**
 * Tables that were read lately, by the hash of their bytes, so that an edit does not read the file again.
 * The least lately used go first when together they exceed `budget` bytes; one larger than that is not kept at all.
 */
export class TableCache {
  private readonly tables = new Map<string, LogTable>();
  private held = 0;

  constructor(private readonly budget: number) {}

  get(sha256: string): LogTable | undefined {
    const table = this.tables.get(sha256);
    // A map keeps the order of insertion: taking out and putting back makes this the latest.
    if (table !== undefined) this.tables.delete(sha256) && this.tables.set(sha256, table);
    return table;
  }

  put(sha256: string, table: LogTable): void {
    if (tableBytes(table) > this.budget) return;
    this.drop(sha256);
    this.tables.set(sha256, table);
    this.held += tableBytes(table);
    for (const oldest of this.tables.keys()) {
      if (this.held <= this.budget) return;
      this.drop(oldest);
    }
  }

  private drop(sha256: string): void {
    const table = this.tables.get(sha256);
    if (table === undefined) return;
    this.held -= tableBytes(table);
    this.tables.delete(sha256);
  }
}
