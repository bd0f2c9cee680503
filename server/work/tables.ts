import type { LogTable } from "../../shared/log/logTable.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import { collectBeyond } from "./collected.ts";
import type { LogFile } from "./jobs.ts";
import { type TableCache, tableKey } from "./tableCache.ts";
import type { TableFolder } from "./tableFolder.ts";

/** Bytes of a table for a byte of its text, about. */
const BYTES_OF_TEXT = 1.4;

/** Bytes of text from which on nothing else should lie in memory. */
const LONG_LOG = 100e6;

export interface Progress {
  readonly onProgress: (fraction: number) => void;
  readonly signal: AbortSignal;
}

/** The tables of logs: from memory, else from the folder of tables, else from the text of the log. */
export class Tables {
  constructor(
    private readonly memory: TableCache,
    private readonly folder?: TableFolder,
  ) {}

  /** Told of progress while the text is read. Throws as readLogFile. */
  async tableOf(file: LogFile, progress: Progress): Promise<LogTable> {
    const key = tableKey(file);
    const table = this.memory.get(key) ?? (await this.fetched(key, file, progress));
    return { ...table, fileName: file.name };
  }

  private async fetched(key: string, file: LogFile, progress: Progress): Promise<LogTable> {
    this.memory.makeRoom(BYTES_OF_TEXT * (file.size ?? 0));
    if ((file.size ?? 0) > LONG_LOG) collectBeyond(0);
    const kept = await this.folder?.read(key);
    const table = kept ?? (await this.read(key, file, progress));
    this.memory.put(key, table);
    return table;
  }

  private async read(key: string, { path, name, reading }: LogFile, progress: Progress): Promise<LogTable> {
    const table = await readLogFile(path, name, { ...progress, ...(reading && { reading }) });
    // Waited for: beside the next job, which does not let go of the thread, it would not get on.
    await this.folder?.write(key, table);
    return table;
  }
}
