import { createHash } from "node:crypto";
import { createReadStream, readdirSync, readFileSync } from "node:fs";
import * as disk from "node:fs/promises";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { expect, test } from "vitest";
import { FileVault } from "../../server/store/fileVault.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";

/** `size` bytes that never repeat in step with a power of two, in chunks of the given sizes, over and over. */
async function* chunked(bytes: Uint8Array, sizes: readonly number[]) {
  for (let at = 0, i = 0; at < bytes.length; i++) {
    const size = sizes[i % sizes.length]!;
    yield bytes.subarray(at, at + size);
    at += size;
  }
}

const BYTES = Uint8Array.from({ length: 3_000_001 }, (_, i) => (i * 31 + (i >> 9)) % 251);

test.each([[[65_536]], [[1, 70_001, 13]], [[524_288]], [[524_289, 524_287]], [[2_500_000]], [[BYTES.length]]])(
  "a file that comes in chunks of %j bytes is kept byte for byte, under its own hash",
  async (sizes) => {
    const vault = await FileVault.open(temporaryFolder());
    const received = await vault.receive(chunked(BYTES, sizes));
    expect(received.size).toBe(BYTES.length);
    expect(received.sha256).toBe(createHash("sha256").update(BYTES).digest("hex"));
    await vault.keep(received);
    expect(readFileSync(vault.path(received.sha256)).equals(BYTES)).toBe(true);
  },
);

test("a file without bytes is received as such", async () => {
  const vault = await FileVault.open(temporaryFolder());
  expect((await vault.receive(chunked(new Uint8Array(0), [1]))).size).toBe(0);
});

test("a stream that fails while the disk still makes its file is told as failed, and leaves nothing behind", async () => {
  const folder = temporaryFolder();
  const slow: typeof disk.open = async (...call) => {
    await setTimeout(50);
    return disk.open(...call);
  };
  const vault = await FileVault.open(folder, { ...disk, open: slow });
  const missing = createReadStream(join(folder, "nowhere.csv"));
  await expect(vault.receive(missing)).rejects.toThrow("ENOENT");
  expect(readdirSync(join(folder, "incoming"))).toEqual([]);
});
