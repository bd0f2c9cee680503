import { basename } from "node:path/posix";
import { bundledSchema } from "../../shared/model/bundle.ts";
import { PART_SCHEMAS, type PartKind } from "../../shared/model/parts/partKinds.ts";
import { Project } from "../../shared/model/project.ts";
import { Run } from "../../shared/model/run.ts";
import { KeptShortlist } from "../../shared/model/shortlistStored.ts";
import { damaged, missing, otherBytes } from "./bundleProblems.ts";
import type { BundleReader } from "./bundleReader.ts";
import { fitted } from "./fitted.ts";
import { entryKind, filePath, PROJECT } from "./layout.ts";

interface Bundled<T> {
  readonly id: string;
  readonly document: T;
}

/** The documents of a bundle, each checked against its schema. */
export interface BundleContent {
  readonly project: Bundled<Project>;
  readonly parts: readonly (Bundled<unknown> & { readonly kind: PartKind })[];
  readonly runs: readonly Bundled<Run>[];
  readonly shortlists: readonly Bundled<KeptShortlist>[];
}

const BundledProject = bundledSchema(Project);
const BundledRun = bundledSchema(Run);
const BundledShortlist = bundledSchema(KeptShortlist);

/** Reads the documents of a bundle. Throws InputProblem `bundle.*`. */
export async function bundleContent(reader: BundleReader): Promise<BundleContent> {
  const parts: (Bundled<unknown> & { readonly kind: PartKind })[] = [];
  const runs: Bundled<Run>[] = [];
  const shortlists: Bundled<KeptShortlist>[] = [];
  let project: Bundled<Project> | undefined;
  for (const entry of reader.manifest.entries) {
    const kind = entryKind(entry.path);
    if (kind === undefined || kind.kind === "file") continue;
    const { path } = entry;
    const value = await reader.json(entry);
    if (kind.kind === "project") project = fitted(BundledProject, value, path);
    if (kind.kind === "run") runs.push(named(fitted(BundledRun, value, path), path));
    if (kind.kind === "shortlist") shortlists.push(named(fitted(BundledShortlist, value, path), path));
    if (kind.kind === "part") parts.push({ ...partOf(kind.of, value, path), kind: kind.of });
  }
  if (project === undefined) throw missing(PROJECT);
  checkFiles(runs, reader);
  return { project, parts, runs, shortlists };
}

const partOf = (kind: PartKind, value: unknown, path: string): Bundled<unknown> =>
  named(fitted(bundledSchema(PART_SCHEMAS[kind]), value, path), path);

/** The identity inside is the one in the name, so that no two documents can share one. */
function named<T extends Bundled<unknown>>(bundled: T, path: string): T {
  if (basename(path) !== `${bundled.id}.json`) throw damaged(path);
  return bundled;
}

/** Files that runs rest on, each once, by SHA-256. */
export function filesOf(runs: readonly Bundled<Run>[]): ReadonlyMap<string, Run["file"]> {
  const files = runs.flatMap(({ document: { file, companion } }) => [file, ...(companion ? [companion.file] : [])]);
  return new Map(files.map((file) => [file.sha256, file]));
}

function checkFiles(runs: readonly Bundled<Run>[], { manifest }: BundleReader): void {
  const listed = new Map(manifest.entries.map((entry) => [entry.path, entry]));
  for (const { sha256, size } of filesOf(runs).values()) {
    const entry = listed.get(filePath(sha256));
    if (entry === undefined) throw missing(filePath(sha256));
    if (entry.sha256 !== sha256 || entry.size !== size) throw otherBytes(entry.path);
  }
}
