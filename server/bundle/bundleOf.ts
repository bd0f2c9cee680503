import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { Readable } from "node:stream";
import { ZipFile } from "yazl";
import { BUNDLE_FORMAT, BUNDLE_VERSION, type BundleEntry, type BundleManifest } from "../../shared/model/bundle.ts";
import { PartKind } from "../../shared/model/parts/partKinds.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { PROGRAM } from "../program.ts";
import type { Store } from "../store/store.ts";
import { filePath, MANIFEST, PROJECT, partPath, runPath, shortlistPath } from "./layout.ts";

/** A document as it goes into a bundle. */
interface Bundled {
  readonly path: string;
  readonly bytes: Buffer;
}

interface BundleOptions {
  readonly savedAt: Date;
  /** Stops the reading of files when nobody takes the bundle any more. */
  readonly signal: AbortSignal;
}

/**
 * Everything of a project as the stream of one ZIP file. The documents are those of this moment; files are read from
 * the disk as they are asked for, so that their size does not matter. Throws NothingThere, or what the disk says of a
 * file that is not there, before the first byte.
 */
export async function bundleOf(store: Store, projectId: string, options: BundleOptions): Promise<Readable> {
  const { documents, files, notIncluded, name } = store.transaction(() => contentOf(store, projectId));
  for (const { sha256 } of files) await stat(store.files.path(sha256));
  const entries = [
    ...documents.map(({ path, bytes }) => ({ path, sha256: sha256Of(bytes), size: bytes.byteLength })),
    ...files.map(({ sha256, size }) => ({ path: filePath(sha256), sha256, size })),
  ];
  const manifest = manifestOf({ project: name, notIncluded, entries }, options.savedAt);
  return zipped([{ path: MANIFEST, bytes: bytesOf(manifest) }, ...documents], files, { store, ...options });
}

function contentOf(store: Store, projectId: string) {
  const project = store.projects.find(projectId);
  const runs = store.runs(projectId).list();
  const documents = [
    bundled(PROJECT, project),
    ...PartKind.options.flatMap((kind) =>
      store
        .parts(projectId, kind)
        .list()
        .map((part: StoredDocument<unknown>) => bundled(partPath(kind, part.id), part)),
    ),
    ...runs.map((run) => bundled(runPath(run.id), run)),
    ...store
      .shortlists(projectId)
      .list()
      .map((kept) => bundled(shortlistPath(kept.id), kept)),
  ];
  const notIncluded = store
    .recordings(projectId)
    .list()
    .map(({ document }) => document.name);
  return { documents, files: filesOf(runs), notIncluded, name: project.document.name };
}

/** Each file that a run rests on, once. */
function filesOf(runs: readonly StoredDocument<Run>[]): Run["file"][] {
  const files = runs.flatMap(({ document: { file, companion } }) => [file, ...(companion ? [companion.file] : [])]);
  return [...new Map(files.map((file) => [file.sha256, file])).values()];
}

const bundled = (path: string, { id, document }: StoredDocument<unknown>): Bundled => ({
  path,
  bytes: bytesOf({ id, document }),
});

const bytesOf = (value: unknown) => Buffer.from(`${JSON.stringify(value, null, 2)}\n`);
const sha256Of = (bytes: Buffer) => createHash("sha256").update(bytes).digest("hex");

function manifestOf(
  rest: Pick<BundleManifest, "project" | "notIncluded"> & { readonly entries: BundleEntry[] },
  savedAt: Date,
): BundleManifest {
  return {
    format: BUNDLE_FORMAT,
    formatVersion: BUNDLE_VERSION,
    program: PROGRAM,
    savedAt: savedAt.toISOString(),
    ...rest,
  };
}

function zipped(
  documents: readonly Bundled[],
  files: readonly Run["file"][],
  { store, savedAt, signal }: BundleOptions & { readonly store: Store },
): Readable {
  const zip = new ZipFile();
  const output = zip.outputStream as Readable;
  // A file that can not be read to its end breaks the answer off: half a bundle must not look like a whole one.
  zip.on("error", (reason: Error) => output.destroy(reason));
  // Once nobody takes it any more, nobody listens for its end either, and an error unheard would end the program.
  output.on("error", () => {});
  for (const { path, bytes } of documents) zip.addBuffer(bytes, path, { mtime: savedAt });
  for (const { sha256, size } of files) {
    const options = { mtime: savedAt, size };
    zip.addReadStreamLazy(filePath(sha256), options, (give) =>
      give(null, createReadStream(store.files.path(sha256), { signal })),
    );
  }
  zip.end();
  return output;
}
