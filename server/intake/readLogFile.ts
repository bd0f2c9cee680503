import { open } from "node:fs/promises";
import type { LogTable } from "../../shared/log/logTable.ts";
import { LogReader } from "../../shared/log/readLog.ts";
import type { LogReading } from "../../shared/model/reading.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

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
  const file = await openFile(path, fileName);
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

async function openFile(path: string, fileName: string) {
  try {
    const file = await open(path, "r");
    if ((await file.stat()).isFile()) return file;
    await file.close();
    throw Object.assign(new Error("not a file"), { code: "EISDIR" });
  } catch (error) {
    throw new InputProblem({
      code: "intake.unreadable",
      where: fileName,
      found: REASONS[(error as NodeJS.ErrnoException).code ?? ""] ?? (error as Error).message,
      needed: "a log file that can be read",
      mend: "Check the name and the permissions",
    });
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no file of this name",
  EACCES: "this file may not be read by you",
  EISDIR: "this is a folder, not a file",
};
