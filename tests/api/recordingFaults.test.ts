import { readFileSync, writeFileSync } from "node:fs";
import * as fileSystem from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type GrowingDisk, GrowingLog } from "../../server/recording/growingLog.ts";
import { temporaryFolder } from "./temporaryFolder.ts";

type Step = "write" | "datasync";

/** A disk that is full at the `fatal`-th of these steps, and has then written half of what it was given. */
function failingDisk(step: Step, fatal: number): GrowingDisk {
  let steps = 0;
  const full = () => Object.assign(new Error("no space left"), { code: "ENOSPC" });
  const open: GrowingDisk["open"] = async (...args) => {
    const file = await fileSystem.open(...args);
    const { datasync } = file;
    const write = file.write.bind(file) as (
      piece: Uint8Array,
      from: number,
      length: number,
      place: number,
    ) => Promise<unknown>;
    file.write = (async (piece: Uint8Array, from: number, length: number, place: number) => {
      if (step !== "write" || ++steps !== fatal) return write(piece, from, length, place);
      await write(piece, from, Math.floor(length / 2), place);
      throw full();
    }) as typeof file.write;
    file.datasync = async () => {
      if (step === "datasync" && ++steps === fatal) throw full();
      return datasync.call(file);
    };
    return file;
  };
  return { ...fileSystem, open };
}

test.each([
  { step: "write", fatal: 1 },
  { step: "write", fatal: 3 },
  { step: "datasync", fatal: 2 },
] as const)(
  "a disk that is full at $step $fatal refuses the post whole, and the same post goes through when there is room",
  async ({ step, fatal }) => {
    const path = join(temporaryFolder(), "log");
    writeFileSync(path, "");
    const log = await GrowingLog.open(path, undefined, failingDisk(step, fatal));
    const pieces = ["a,b\n", "1,2\n3,4\n", "5,6\n7,", "8\n"];
    let failures = 0;
    for (const piece of pieces) {
      const before = log.held;
      for (;;) {
        try {
          // Without a place, as a simple program posts: nothing of the failed attempt may stand before it.
          await log.append(Buffer.from(piece));
          break;
        } catch (reason) {
          expect(reason).toMatchObject({ code: "ENOSPC" });
          expect(log.held).toEqual(before);
          failures += 1;
        }
      }
    }
    expect(failures).toBe(1);
    expect(readFileSync(path, "utf8")).toBe(pieces.join(""));
    const again = await GrowingLog.open(path);
    expect(again.whole).toEqual(log.whole);
  },
);

test("posts that come at once are taken one after the other, none torn", async () => {
  const path = join(temporaryFolder(), "log");
  writeFileSync(path, "");
  const log = await GrowingLog.open(path);
  const lines = Array.from({ length: 60 }, (_, i) => `${i},${"x".repeat(i * 7)}\n`);
  await Promise.all(lines.map((line) => log.append(Buffer.from(line))));
  expect(readFileSync(path, "utf8")).toBe(lines.join(""));
  expect(log.held).toMatchObject({ lines: 60, bytes: lines.join("").length });
});

test("a sealed log takes what came before, refuses what comes after, and goes on when it is unsealed", async () => {
  const path = join(temporaryFolder(), "log");
  writeFileSync(path, "");
  const log = await GrowingLog.open(path);
  const before = log.append(Buffer.from("1\n"));
  const sealed = log.seal();
  const after = log.append(Buffer.from("2\n"));
  await Promise.all([before, sealed]);
  await expect(after).rejects.toMatchObject({ problem: { code: "recording.ended" } });
  log.unseal();
  await log.append(Buffer.from("3\n"));
  expect(readFileSync(path, "utf8")).toBe("1\n3\n");
});
