import { createHash } from "node:crypto";
import { buffer } from "node:stream/consumers";
import { fromBufferPromise } from "yauzl";
import { ZipFile } from "yazl";
import type { BundleManifest } from "../../shared/model/bundle.ts";

/** What a bundle holds, by name. */
export type Unpacked = Map<string, Buffer>;

/** Every entry of a ZIP file, unpacked. */
export async function unpacked(bytes: Uint8Array): Promise<Unpacked> {
  const zip = await fromBufferPromise(Buffer.from(bytes), { autoClose: false });
  const entries: Unpacked = new Map();
  for await (const entry of zip.eachEntry()) {
    entries.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  }
  return entries;
}

/** A ZIP file of `entries`; a name may come more than once. */
export async function packed(entries: Iterable<readonly [string, Uint8Array]>): Promise<Buffer<ArrayBuffer>> {
  const zip = new ZipFile();
  for (const [name, bytes] of entries) zip.addBuffer(Buffer.from(bytes), name);
  zip.end();
  return Buffer.from(await buffer(zip.outputStream));
}

export const manifestIn = (entries: Unpacked) => JSON.parse(String(entries.get("manifest.json"))) as BundleManifest;

/** The same entries with a manifest that fits them, changed by `change`. */
export function listedAgain(
  entries: Unpacked,
  change: (manifest: BundleManifest) => object = (same) => same,
): Unpacked {
  const manifest = manifestIn(entries);
  const others = [...entries].filter(([path]) => path !== "manifest.json");
  const list = others.map(([path, bytes]) => ({ path, sha256: sha256(bytes), size: bytes.length }));
  const changed = Buffer.from(JSON.stringify(change({ ...manifest, entries: list })));
  return new Map([["manifest.json", changed], ...others]);
}

export const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

/** `bytes` with every `before` made `after`, which is as long: names inside a ZIP file that no library would write. */
export function forged(bytes: Buffer, before: string, after: string): Buffer<ArrayBuffer> {
  if (before.length !== after.length) throw new Error("A name can only be replaced by one as long.");
  return Buffer.from(bytes.toString("latin1").replaceAll(before, after), "latin1");
}
