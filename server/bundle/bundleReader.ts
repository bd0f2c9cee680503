import { createHash } from "node:crypto";
import type { Readable } from "node:stream";
import { type Entry, openPromise, type ZipFile } from "yauzl";
import { z } from "zod";
import { BUNDLE_FORMAT, BUNDLE_VERSION, type BundleEntry, BundleManifest } from "../../shared/model/bundle.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import {
  damaged,
  missing,
  newer,
  notListed,
  notZip,
  otherBytes,
  tooLarge,
  twice,
  unsafeName,
} from "./bundleProblems.ts";
import { fitted } from "./fitted.ts";
import { entryKind, MANIFEST } from "./layout.ts";

/** How much a bundle may hold; a test sets less. */
export interface BundleLimits {
  readonly entries: number;
  /** Bytes of everything, unpacked. */
  readonly unpacked: number;
  /** Bytes of one document, unpacked. */
  readonly document: number;
  /** How many times larger the unpacked bytes may be than the file, above 64 MB. */
  readonly ratio: number;
}

export const BUNDLE_LIMITS: BundleLimits = {
  entries: 50_000,
  unpacked: 16 * 1024 ** 3,
  document: 64 * 1024 ** 2,
  ratio: 300,
};

const SMALL = 64 * 1024 ** 2;

/**
 * A bundle on disk that was looked through: every name is one that a bundle holds, stands there once and is listed, and
 * the sizes are within limits. Bytes are checked against their hash as they are read.
 */
export class BundleReader {
  private constructor(
    private readonly zip: ZipFile,
    private readonly byName: ReadonlyMap<string, Entry>,
    readonly manifest: BundleManifest,
  ) {}

  /** Throws InputProblem `bundle.*`. */
  static async open(path: string, limits: BundleLimits = BUNDLE_LIMITS): Promise<BundleReader> {
    const zip = await openPromise(path, { autoClose: false, strictFileNames: true }).catch(() => {
      throw notZip();
    });
    try {
      const byName = await entriesOf(zip, limits);
      const manifest = manifestOf(await manifestBytes(zip, byName));
      checkList(byName, manifest);
      return new BundleReader(zip, byName, manifest);
    } catch (reason) {
      zip.close();
      throw reason;
    }
  }

  close(): void {
    this.zip.close();
  }

  /** Bytes of a listed entry as they come. Throws `bundle.damaged`, or `bundle.other-bytes` at their end. */
  async *bytes(listed: BundleEntry): AsyncGenerator<Uint8Array> {
    const entry = this.byName.get(listed.path);
    if (entry === undefined) throw missing(listed.path);
    const hash = createHash("sha256");
    for await (const piece of unpacked(this.zip, entry)) {
      hash.update(piece);
      yield piece;
    }
    if (hash.digest("hex") !== listed.sha256) throw otherBytes(listed.path);
  }

  /** A listed entry as JSON. Throws as `bytes`. */
  async json(listed: BundleEntry): Promise<unknown> {
    return parsed(await collected(this.bytes(listed)), listed.path);
  }
}

/** The list at the end of the file, looked through before a byte is unpacked. */
async function entriesOf(zip: ZipFile, limits: BundleLimits): Promise<Map<string, Entry>> {
  const byName = new Map<string, Entry>();
  let size = 0;
  if (zip.entryCount > limits.entries) {
    throw tooLarge(`It holds ${zip.entryCount} entries`, `at most ${limits.entries}`);
  }
  try {
    for await (const entry of zip.eachEntry()) {
      const name = entry.fileName;
      const kind = entryKind(name)?.kind;
      if (kind === undefined) throw unsafeName(name);
      if (byName.has(name)) throw twice(name);
      if (kind !== "file" && entry.uncompressedSize > limits.document) {
        throw tooLarge(`${name} unpacks to ${entry.uncompressedSize} bytes`, `at most ${limits.document} bytes`);
      }
      size += entry.uncompressedSize;
      byName.set(name, entry);
    }
  } catch (reason) {
    throw told(reason);
  }
  checkSize(size, zip.fileSize, limits);
  return byName;
}

function checkSize(size: number, packed: number, limits: BundleLimits): void {
  if (size > limits.unpacked) throw tooLarge(`It unpacks to ${size} bytes`, `at most ${limits.unpacked} bytes`);
  if (size > SMALL && size > packed * limits.ratio) {
    throw tooLarge(`${packed} bytes unpack to ${size}`, `at most ${limits.ratio} times the size of the file`);
  }
}

async function manifestBytes(zip: ZipFile, byName: ReadonlyMap<string, Entry>): Promise<Uint8Array> {
  const entry = byName.get(MANIFEST);
  if (entry === undefined) throw notZip();
  return collected(unpacked(zip, entry));
}

const Head = z.looseObject({ format: z.literal(BUNDLE_FORMAT), formatVersion: z.number() });

function manifestOf(bytes: Uint8Array): BundleManifest {
  const value = parsed(bytes, MANIFEST);
  const head = Head.safeParse(value);
  if (!head.success) throw notZip();
  // First: a newer list may hold members that are unknown here.
  if (head.data.formatVersion > BUNDLE_VERSION) throw newer(head.data.formatVersion, BUNDLE_VERSION);
  return fitted(BundleManifest, value, MANIFEST);
}

function checkList(byName: ReadonlyMap<string, Entry>, { entries }: BundleManifest): void {
  const listed = new Set<string>();
  for (const { path, size } of entries) {
    if (listed.has(path)) throw twice(path);
    listed.add(path);
    const entry = byName.get(path);
    if (path === MANIFEST || entryKind(path) === undefined) throw unsafeName(path);
    if (entry === undefined) throw missing(path);
    if (entry.uncompressedSize !== size) throw otherBytes(path);
  }
  for (const name of byName.keys()) if (name !== MANIFEST && !listed.has(name)) throw notListed(name);
}

/** The unpacked bytes of an entry; more or fewer than it states are refused on the way. */
async function* unpacked(zip: ZipFile, entry: Entry): AsyncGenerator<Uint8Array> {
  let stream: Readable | undefined;
  try {
    stream = await zip.openReadStreamPromise(entry);
    yield* stream as AsyncIterable<Uint8Array>;
  } catch (reason) {
    throw told(reason, entry.fileName);
  } finally {
    stream?.destroy();
  }
}

async function collected(bytes: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of bytes) pieces.push(piece);
  return Buffer.concat(pieces);
}

function parsed(bytes: Uint8Array, name: string): unknown {
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw damaged(name);
  }
}

/** What the ZIP library found wrong, in our words. A failing disk stays what it is. */
function told(reason: unknown, name?: string): unknown {
  if (reason instanceof InputProblem) return reason;
  if (!(reason instanceof Error) || "syscall" in reason) return reason;
  if (/invalid characters|absolute path|invalid relative path/.test(reason.message)) {
    return unsafeName(reason.message.split(": ").slice(1).join(": "));
  }
  return damaged(name);
}
