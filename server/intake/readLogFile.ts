import type { LogTable } from "../../shared/log/logTable.ts";
import { LogReader } from "../../shared/log/readLog.ts";
import type { LogReading } from "../../shared/model/reading.ts";
import { openFile } from "./openFile.ts";

const CHUNK = 1 << 20;

export interface ReadOptions {
  /** Told the share of the file that was read, 0 to 1. */
  readonly onProgress?: (fraction: number) => void;
  readonly signal?: AbortSignal;
  /** What a person decided about the text. */
  readonly reading?: LogReading;
  /** Bytes to read of a file that grows; all where absent. */
  readonly upTo?: number;
}

/**
 * Reads a log from disk chunk by chunk, so that the text never stands in memory whole.
 * Throws InputProblem `intake.unreadable` when the file can not be opened, or what the reader says of its content.
 */
export async function readLogFile(path: string, fileName: string, options: ReadOptions = {}): Promise<LogTable> {
  const { upTo = Infinity } = options;
  const file = await openFile(path, { where: fileName, needed: "a log file that can be read" });
  try {
    const size = Math.min(upTo, (await file.stat()).size);
    const reader = new LogReader(fileName, size, options.reading);
    const chunk = new Uint8Array(CHUNK);
    for (let done = 0; ; ) {
      options.signal?.throwIfAborted();
      const { bytesRead } = await file.read(chunk, 0, Math.min(CHUNK, upTo - done));
      if (bytesRead === 0) return reader.end();
      reader.push(chunk.subarray(0, bytesRead));
      done += bytesRead;
      options.onProgress?.(size > 0 ? Math.min(1, done / size) : 1);
    }
  } finally {
    await file.close();
  }
}
