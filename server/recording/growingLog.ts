import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import * as disk from "node:fs/promises";
import { LineTally } from "../../shared/log/lineTally.ts";
import type { Held } from "../../shared/model/recording.ts";
import { InputProblem, type Problem } from "../../shared/quantity/problem.ts";
import { Refusal } from "../problems/problemDetails.ts";
import { FILE_LIMIT, logTooLarge } from "../problems/serverRefusals.ts";

/** The operations on files that it rests on; a test puts a disk that fails in their place. */
export type GrowingDisk = Pick<typeof disk, "open" | "stat">;

/** The whole lines of a log that may grow on behind them. */
export interface WholeLines {
  readonly path: string;
  readonly bytes: number;
  readonly lines: number;
  readonly sha256: string;
}

/**
 * A log that grows by what is posted. A piece is on the disk, forced there, before `append` resolves; pieces are taken
 * one after the other, and one that says where it belongs is taken once, however often it comes.
 */
export class GrowingLog {
  private readonly tally = new LineTally();
  /** Of all bytes, and of those up to the end of the last whole line. */
  private readonly hash = createHash("sha256");
  private wholeHash = this.hash.copy();
  private receivedAt: Date | null = null;
  private turn: Promise<unknown> = Promise.resolve();
  private isSealed = false;

  private constructor(
    private readonly path: string,
    private readonly limit: number,
    private readonly disk: GrowingDisk,
  ) {}

  /** The log at `path` as an earlier process left it. */
  static async open(path: string, limit = FILE_LIMIT, with_: GrowingDisk = disk): Promise<GrowingLog> {
    const log = new GrowingLog(path, limit, with_);
    const { mtime } = await with_.stat(path);
    for await (const chunk of createReadStream(path)) log.note(chunk as Uint8Array, mtime);
    return log;
  }

  get held(): Held {
    const { bytes, lines } = this.tally;
    return { bytes, lines, receivedAt: this.receivedAt?.toISOString() ?? null };
  }

  get whole(): WholeLines {
    const { wholeBytes, lines } = this.tally;
    return { path: this.path, bytes: wholeBytes, lines, sha256: this.wholeHash.copy().digest("hex") };
  }

  /**
   * Takes a piece that begins at `offset`, or at the end where none is stated; what of it is there already is compared
   * and let be. Throws InputProblem `recording.gap` or `recording.other-bytes`, a Refusal above the greatest size, or as
   * the disk does; nothing of the piece is kept then.
   */
  append(piece: Uint8Array, offset?: number): Promise<void> {
    const taken = this.turn.then(() => this.take(piece, offset));
    this.turn = taken.catch(() => {});
    return taken;
  }

  /** Takes nothing more once what came before is written, until `unseal`. */
  seal(): Promise<void> {
    const sealed = this.turn.then(() => {
      this.isSealed = true;
    });
    this.turn = sealed;
    return sealed;
  }

  unseal(): void {
    this.isSealed = false;
  }

  private async take(piece: Uint8Array, offset = this.tally.bytes): Promise<void> {
    if (this.isSealed) throw ended();
    const { bytes } = this.tally;
    if (offset > bytes) throw gap(bytes, offset);
    const known = Math.min(bytes - offset, piece.length);
    if (known === piece.length && known === 0) return;
    if (offset + piece.length > this.limit) throw new Refusal(413, logTooLarge);
    const file = await this.disk.open(this.path, "r+");
    try {
      await checkSame(file, piece.subarray(0, known), offset);
      if (known < piece.length) await this.write(file, piece.subarray(known), bytes);
    } finally {
      await file.close();
    }
  }

  private async write(file: disk.FileHandle, piece: Uint8Array, place: number): Promise<void> {
    try {
      for (let done = 0; done < piece.length; ) {
        done += (await file.write(piece, done, piece.length - done, place + done)).bytesWritten;
      }
      await file.datasync();
    } catch (reason) {
      // What was not acknowledged must not stand behind the next piece. A disk that refuses this too is told of by `reason`.
      await file.truncate(place).catch(() => {});
      throw reason;
    }
    this.note(piece, new Date());
  }

  private note(piece: Uint8Array, at: Date): void {
    const start = this.tally.bytes;
    this.tally.push(piece);
    const whole = Math.max(0, this.tally.wholeBytes - start);
    this.hash.update(piece.subarray(0, whole));
    if (whole > 0) this.wholeHash = this.hash.copy();
    this.hash.update(piece.subarray(whole));
    this.receivedAt = at;
  }
}

/** Bytes that are compared at a time. */
const PIECE = 1 << 16;

async function checkSame(file: disk.FileHandle, piece: Uint8Array, place: number): Promise<void> {
  const there = new Uint8Array(Math.min(PIECE, piece.length));
  for (let done = 0; done < piece.length; done += there.length) {
    const part = piece.subarray(done, done + there.length);
    const { bytesRead } = await file.read(there, 0, part.length, place + done);
    if (bytesRead < part.length || Buffer.compare(there.subarray(0, part.length), part) !== 0) {
      throw otherBytes(place + done);
    }
  }
}

const problem = (code: string, words: Omit<Problem, "code" | "where">) =>
  new InputProblem({ code, where: "query: offset", ...words });

function ended(): InputProblem {
  return new InputProblem({
    code: "recording.ended",
    where: "",
    found: "The recording has ended, or is just being made a run",
    needed: "",
    mend: "Begin another one for further lines. Nothing of this post was kept",
  });
}

function gap(held: number, offset: number): InputProblem {
  return problem("recording.gap", {
    found: `The post begins at byte ${offset}, and ${held} bytes are held: what lies between never came`,
    needed: `a post from byte ${held} on, or from before it`,
    mend: `Send again from byte ${held} on. Nothing of this post was kept`,
  });
}

function otherBytes(place: number): InputProblem {
  return problem("recording.other-bytes", {
    found: `From byte ${place} on, other lines are held than this post brings for the same place`,
    needed: "one program that writes a recording",
    mend: "Stop the other program, or begin a recording for each. Nothing of this post was kept",
  });
}
