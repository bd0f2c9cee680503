import { createHash, randomUUID } from "node:crypto";
import { type FileHandle, mkdir, open, readdir, rename, rm, stat, utimes } from "node:fs/promises";
import { join } from "node:path";
import { crc32 } from "node:zlib";
import type { LogTable } from "../../shared/log/logTable.ts";
import { PROGRAM } from "../program.ts";
import { tableBytes } from "./tableCache.ts";

/** Raise it when the layout below or the reading of logs changes without a new version of the program. */
const LAYOUT = 1;
/** Tables below this are read from their text as fast. */
const LEAST_BYTES = 2e6;
/** Bytes of all kept tables together; beyond that the least lately used go. */
const MOST_BYTES = 4e9;
const ENDING = ".table";
/** A file that was begun so long ago and is not finished belongs to a thread that was ended, ms. */
const LONGEST_WRITING = 600_000;
/** Bytes written and read at a time. */
const PIECE = 1 << 24;

/** A table without its numbers, and where those stand. */
interface Head extends Omit<LogTable, "columns" | "lineNumbers"> {
  readonly stamp: string;
  readonly columnCount: number;
  readonly checksum: number;
}

/**
 * Tables as they were read, kept as bare numbers in a folder, so that neither a restart nor a log too large for memory
 * makes the text be read again. It may be emptied at any time: a file that is cut short, damaged, or of another version
 * counts as not there.
 *
 * A file: length of the head (4 bytes), the head (JSON), columns (float64), line numbers (uint32).
 */
export class TableFolder {
  constructor(private readonly folder: string) {}

  /** The table under `key` (`tableKey`); undefined where none can be used. */
  async read(key: string): Promise<LogTable | undefined> {
    const path = this.path(key);
    try {
      const file = await open(path, "r");
      try {
        const table = await tableIn(file, stampOf(key));
        const now = new Date();
        if (table !== undefined) await utimes(path, now, now);
        return table;
      } finally {
        await file.close();
      }
    } catch {
      return undefined;
    }
  }

  /** Keeps `table`; a disk that is full or may not be written to costs time later and nothing else. */
  async write(key: string, table: LogTable): Promise<void> {
    if (tableBytes(table) < LEAST_BYTES) return;
    const unfinished = join(this.folder, randomUUID());
    try {
      await mkdir(this.folder, { recursive: true });
      await this.makeRoom(tableBytes(table));
      await writeTable(unfinished, stampOf(key), table);
      await rename(unfinished, this.path(key));
    } catch {
      await rm(unfinished, { force: true }).catch(() => {});
    }
  }

  private path(key: string): string {
    return join(this.folder, createHash("sha256").update(stampOf(key)).digest("hex") + ENDING);
  }

  private async makeRoom(bytes: number): Promise<void> {
    const paths = (await readdir(this.folder)).map((name) => join(this.folder, name));
    const all = await Promise.all(paths.map(async (path) => ({ path, ...(await sizeAndAge(path)) })));
    const isLeftover = ({ path, usedAt }: (typeof all)[number]) =>
      !path.endsWith(ENDING) && usedAt < Date.now() - LONGEST_WRITING;
    for (const { path } of all.filter(isLeftover)) await rm(path, { force: true });
    const files = all.filter((file) => !isLeftover(file));
    let held = files.reduce((sum, { size }) => sum + size, bytes);
    for (const { path, size } of files.sort((a, b) => a.usedAt - b.usedAt)) {
      if (held <= MOST_BYTES) return;
      await rm(path, { force: true });
      held -= size;
    }
  }
}

async function sizeAndAge(path: string) {
  const { size, mtimeMs } = await stat(path);
  return { size, usedAt: mtimeMs };
}

function stampOf(key: string): string {
  return `${PROGRAM}, layout ${LAYOUT}: ${key}`;
}

async function writeTable(path: string, stamp: string, table: LogTable): Promise<void> {
  const { columns, lineNumbers, ...rest } = table;
  const parts = [...columns, lineNumbers].map(bytesOf);
  const checksum = parts.reduce((sum, part) => crc32(part, sum), 0);
  const head = Buffer.from(JSON.stringify({ ...rest, stamp, columnCount: columns.length, checksum } satisfies Head));
  const length = Buffer.alloc(4);
  length.writeUInt32LE(head.length);
  const file = await open(path, "wx");
  try {
    for (const part of [length, head, ...parts]) {
      for (let at = 0; at < part.length; at += PIECE) await file.writeFile(part.subarray(at, at + PIECE));
    }
  } finally {
    await file.close();
  }
}

async function tableIn(file: FileHandle, stamp: string): Promise<LogTable | undefined> {
  const length = Buffer.alloc(4);
  await fill(file, length);
  const { size } = await file.stat();
  if (length.readUInt32LE() > size) return undefined;
  const text = Buffer.alloc(length.readUInt32LE());
  await fill(file, text);
  const { stamp: written, columnCount, checksum, ...rest } = JSON.parse(text.toString()) as Head;
  const bytes = columnCount * rest.rows * 8 + rest.rows * 4;
  if (written !== stamp || size !== length.length + text.length + bytes) return undefined;
  const columns = Array.from({ length: columnCount }, () => new Float64Array(rest.rows));
  const lineNumbers = new Uint32Array(rest.rows);
  let sum = 0;
  for (const part of [...columns, lineNumbers].map(bytesOf)) {
    await fill(file, part);
    sum = crc32(part, sum);
  }
  return sum === checksum ? { ...rest, columns, lineNumbers } : undefined;
}

/** Reads on from where the file stands until `target` is full. Throws where the file ends before. */
async function fill(file: FileHandle, target: Uint8Array): Promise<void> {
  for (let at = 0; at < target.length; ) {
    const { bytesRead } = await file.read(target, at, Math.min(PIECE, target.length - at));
    if (bytesRead === 0) throw new Error("The file ends too early");
    at += bytesRead;
  }
}

function bytesOf({ buffer, byteOffset, byteLength }: Float64Array | Uint32Array): Uint8Array {
  return new Uint8Array(buffer, byteOffset, byteLength);
}
