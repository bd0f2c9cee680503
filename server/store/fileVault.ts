import { createHash, randomUUID } from "node:crypto";
import * as disk from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";

/** The operations on files that the vault rests on; a test puts a disk that fails in their place. */
export type Disk = Pick<typeof disk, "open" | "rename" | "rm" | "mkdir" | "readdir">;

/** A file that has arrived whole and safe on disk, but is not yet kept. */
export interface ReceivedFile {
  readonly path: string;
  readonly sha256: string;
  readonly size: number;
}

/**
 * Files as they came, each kept once under the SHA-256 of its bytes.
 *
 * A file is written to `incoming/`, forced to the disk, and only then renamed into `files/`; the folder is forced too.
 * So a file under its hash is always whole, whenever the process was killed. One that was kept but not yet noted in the
 * database stays where it is: it takes room, harms nobody, and is there when the same bytes come again.
 */
export class FileVault {
  private constructor(
    private readonly folder: string,
    private readonly disk: Disk,
  ) {}

  /** Makes the folders and throws away what never arrived whole. Only for the process that holds the data folder. */
  static async open(folder: string, with_: Disk = disk): Promise<FileVault> {
    const vault = new FileVault(folder, with_);
    await with_.mkdir(join(folder, "files"), { recursive: true });
    await with_.mkdir(vault.incoming(), { recursive: true });
    await with_.mkdir(vault.recordingFolder(), { recursive: true });
    await vault.syncFolder(folder);
    for (const leftover of await with_.readdir(vault.incoming())) await with_.rm(vault.incoming(leftover));
    return vault;
  }

  /** Where the bytes with this hash are kept. */
  path(sha256: string): string {
    return join(this.folder, "files", sha256);
  }

  /** Folder for what can be made again from the files at any time. */
  cacheFolder(): string {
    return join(this.folder, "cache");
  }

  /** Folder for logs that are still being written, see `GrowingLog`. */
  recordingFolder(): string {
    return join(this.folder, "recordings");
  }

  /** Writes the bytes as they come and hashes them on the way; nothing is held in memory. */
  async receive(bytes: AsyncIterable<Uint8Array>): Promise<ReceivedFile> {
    // A stream may fail before it is read from, and an error that nobody listens for ends the program. Reading it tells.
    if (bytes instanceof Readable) bytes.on("error", () => {});
    const path = this.incoming(randomUUID());
    try {
      return { path, ...(await this.write(path, bytes)) };
    } catch (reason) {
      await this.disk.rm(path, { force: true });
      throw reason;
    }
  }

  /** Keeps a received file for good. The same bytes a second time take the place of the first. */
  async keep({ path, sha256 }: ReceivedFile): Promise<void> {
    await this.disk.rename(path, this.path(sha256));
    await this.syncFolder(join(this.folder, "files"));
  }

  /** Throws a received file away. */
  async discard({ path }: ReceivedFile): Promise<void> {
    await this.disk.rm(path, { force: true });
  }

  private async write(path: string, bytes: AsyncIterable<Uint8Array>): Promise<{ sha256: string; size: number }> {
    const hash = createHash("sha256");
    let size = 0;
    const file = await this.disk.open(path, "wx");
    try {
      for await (const piece of inPieces(bytes)) {
        hash.update(piece);
        size += piece.byteLength;
        await file.writeFile(piece);
      }
      await file.sync();
    } finally {
      await file.close();
    }
    return { sha256: hash.digest("hex"), size };
  }

  private async syncFolder(path: string): Promise<void> {
    // A folder can not be forced to disk there; the file system does it by itself.
    if (process.platform === "win32") return;
    const folder = await this.disk.open(path, "r");
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  }

  private incoming(name = ""): string {
    return join(this.folder, "incoming", name);
  }
}

/** Bytes written at a time: enough that going to the disk is seldom, few enough to be hashed in a millisecond. */
const PIECE = 1 << 19;

/** The same bytes in pieces of about `PIECE`. The buffer is used again: a piece is good until the next is asked for. */
async function* inPieces(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const piece = new Uint8Array(PIECE);
  let filled = 0;
  for await (const chunk of bytes) {
    for (let at = 0; at < chunk.byteLength; ) {
      const part = chunk.subarray(at, at + PIECE - filled);
      piece.set(part, filled);
      filled += part.byteLength;
      at += part.byteLength;
      if (filled < PIECE) continue;
      yield piece;
      filled = 0;
    }
  }
  if (filled > 0) yield piece.subarray(0, filled);
}
