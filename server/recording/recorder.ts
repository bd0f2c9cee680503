import { existsSync } from "node:fs";
import * as fileSystem from "node:fs/promises";
import { join } from "node:path";
import { type GrowingDisk, GrowingLog } from "./growingLog.ts";

/** The growing logs of recordings, each a file named by the recording's id. */
export class Recorder {
  private readonly logs = new Map<string, Promise<GrowingLog>>();
  /** Those being thrown away, which count as gone from the first moment. */
  private readonly leaving = new Set<string>();

  constructor(
    private readonly folder: string,
    private readonly limit?: number,
    private readonly disk: GrowingDisk = fileSystem,
  ) {}

  /** The log of a recording that has not ended; empty for a new one. */
  log(id: string): Promise<GrowingLog> {
    const known = this.logs.get(id);
    if (known !== undefined) return known;
    const opened = this.open(id).catch((reason: unknown) => {
      this.logs.delete(id);
      throw reason;
    });
    this.logs.set(id, opened);
    return opened;
  }

  /** Whether there is a log: not any more after `remove`. */
  has(id: string): boolean {
    return !this.leaving.has(id) && existsSync(this.path(id));
  }

  path(id: string): string {
    return join(this.folder, id);
  }

  /** Throws the log away: its bytes are kept elsewhere, or nobody will ask for them any more. */
  async remove(id: string): Promise<void> {
    this.logs.delete(id);
    this.leaving.add(id);
    try {
      await fileSystem.rm(this.path(id), { force: true });
    } finally {
      this.leaving.delete(id);
    }
  }

  private async open(id: string): Promise<GrowingLog> {
    const file = await this.disk.open(this.path(id), "a");
    await file.close();
    await this.syncFolder();
    return GrowingLog.open(this.path(id), this.limit, this.disk);
  }

  private async syncFolder(): Promise<void> {
    // A folder can not be forced to disk there; the file system does it by itself.
    if (process.platform === "win32") return;
    const folder = await fileSystem.open(this.folder, "r");
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  }
}
