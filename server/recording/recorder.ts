import * as disk from "node:fs/promises";
import { join } from "node:path";
import { NothingThere } from "../store/refusals.ts";
import { type GrowingDisk, GrowingLog } from "./growingLog.ts";

/** The growing logs of recordings, each a file named by the recording's id. */
export class Recorder {
  private readonly logs = new Map<string, Promise<GrowingLog>>();

  constructor(
    private readonly folder: string,
    private readonly limit?: number,
    private readonly disk: GrowingDisk = disk,
  ) {}

  /** Makes the empty log of a new recording. */
  async create(id: string): Promise<void> {
    const file = await disk.open(this.path(id), "wx");
    try {
      await file.sync();
    } finally {
      await file.close();
    }
    await this.syncFolder();
  }

  /** Throws NothingThere for a recording that ended: its lines are a run's now. */
  log(id: string): Promise<GrowingLog> {
    const known = this.logs.get(id);
    if (known !== undefined) return known;
    const opened = GrowingLog.open(this.path(id), this.limit, this.disk).catch((reason: unknown) => {
      this.logs.delete(id);
      throw (reason as NodeJS.ErrnoException).code === "ENOENT" ? new NothingThere("recording", id) : reason;
    });
    this.logs.set(id, opened);
    return opened;
  }

  path(id: string): string {
    return join(this.folder, id);
  }

  /** Throws the log away: its bytes are kept elsewhere. */
  async remove(id: string): Promise<void> {
    this.logs.delete(id);
    await disk.rm(this.path(id), { force: true });
  }

  private async syncFolder(): Promise<void> {
    // A folder can not be forced to disk there; the file system does it by itself.
    if (process.platform === "win32") return;
    const folder = await disk.open(this.folder, "r");
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  }
}
