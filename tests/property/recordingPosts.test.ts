import { createHash } from "node:crypto";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { GrowingLog } from "../../server/recording/growingLog.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";

const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

/** Bytes among which line ends are common, and the posts that bring them: in order, some again, some overlapping. */
const sending = fc
  .uint8Array({ minLength: 1, maxLength: 400 })
  .map((bytes) => bytes.map((byte) => (byte < 50 ? 10 : byte < 70 ? 13 : byte)))
  .chain((bytes) =>
    fc.record({
      bytes: fc.constant(bytes),
      posts: fc.array(fc.record({ back: fc.nat(60), length: fc.integer({ min: 1, max: 90 }) }), {
        minLength: 1,
        maxLength: 40,
      }),
      restarts: fc.array(fc.nat(40), { maxLength: 3 }),
    }),
  );

test("however the bytes are cut into posts, repeated and overlapped, and wherever the workbench restarts, the file is theirs", async () => {
  const path = join(temporaryFolder(), "log");
  await fc.assert(
    fc.asyncProperty(sending, async ({ bytes, posts, restarts }) => {
      writeFileSync(path, "");
      let log = await GrowingLog.open(path);
      for (const [index, { back, length }] of posts.entries()) {
        if (restarts.includes(index)) log = await GrowingLog.open(path);
        const offset = Math.max(0, log.held.bytes - back);
        await log.append(bytes.subarray(offset, offset + length), offset);
      }
      await log.append(bytes.subarray(log.held.bytes), log.held.bytes);
      const kept = readFileSync(path);
      expect(kept.equals(bytes)).toBe(true);
      const { whole, held } = log;
      expect(held.bytes).toBe(bytes.length);
      expect(whole.sha256).toBe(sha256(bytes.subarray(0, whole.bytes)));
      // What is left behind the whole lines is the beginning of one.
      expect(bytes.subarray(whole.bytes).some((byte) => byte === 10 || byte === 13)).toBe(false);
      const text = String.fromCharCode(...bytes.subarray(0, whole.bytes));
      expect(whole.lines).toBe(text.match(/\r\n|\r|\n/g)?.length ?? 0);
      rmSync(path);
    }),
    { numRuns: 60 },
  );
});
