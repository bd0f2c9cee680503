import { randomUUID } from "node:crypto";
import type { OpenedBundle } from "../../shared/model/bundle.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";
import type { DocumentShelf } from "../store/documentShelf.ts";
import type { ReceivedFile } from "../store/fileVault.ts";
import type { Store } from "../store/store.ts";
import { type BundleContent, bundleContent, filesOf } from "./bundleContent.ts";
import { BUNDLE_LIMITS, type BundleLimits, BundleReader } from "./bundleReader.ts";
import { filePath } from "./layout.ts";
import { type Identities, linksOf, withNewIdentities } from "./withNewIdentities.ts";

/** A bundle on its way in. */
export interface IncomingBundle {
  readonly bytes: AsyncIterable<Uint8Array>;
  readonly limits?: BundleLimits;
}

/**
 * Makes a new project of a bundle: received whole, looked through, every byte checked against its hash and every
 * document against its schema; then files are kept and everything is entered together under new identities, all or
 * nothing. Throws InputProblem `bundle.*`.
 */
export async function openBundle(
  store: Store,
  { bytes, limits = BUNDLE_LIMITS }: IncomingBundle,
): Promise<OpenedBundle> {
  const bundle = await store.files.receive(bytes);
  try {
    const reader = await BundleReader.open(bundle.path, limits);
    try {
      return await entered(store, reader);
    } finally {
      reader.close();
    }
  } finally {
    await store.files.discard(bundle);
  }
}

async function entered(store: Store, reader: BundleReader): Promise<OpenedBundle> {
  const content = await bundleContent(reader);
  const received: ReceivedFile[] = [];
  try {
    const listed = new Map(reader.manifest.entries.map((entry) => [entry.path, entry]));
    for (const sha256 of filesOf(content.runs).keys()) {
      received.push(await store.files.receive(reader.bytes(listed.get(filePath(sha256))!)));
    }
    for (const file of received) await store.files.keep(file);
    const project = store.transaction(() => enterAll(store, content, received));
    return {
      project,
      counts: {
        parts: content.parts.length,
        runs: content.runs.length,
        shortlists: content.shortlists.length,
        files: received.length,
      },
      notIncluded: reader.manifest.notIncluded,
      warnings: warningsOf(content),
    };
  } finally {
    // Kept files have moved on; this is for the others.
    for (const file of received) await store.files.discard(file);
  }
}

function enterAll(
  store: Store,
  { project, parts, runs, shortlists }: BundleContent,
  received: readonly ReceivedFile[],
): OpenedBundle["project"] {
  const given: Identities = new Map([project, ...parts, ...runs, ...shortlists].map(({ id }) => [id, randomUUID()]));
  const enter = <T>(shelf: DocumentShelf<T>, { id, document }: { readonly id: string; readonly document: T }) =>
    shelf.add(withNewIdentities(document, given), given.get(id));
  for (const file of received) store.noteFile(file);
  const stored = enter(store.projects, { ...project, document: named(project.document, store) });
  for (const { kind, ...part } of parts) enter(store.parts(stored.id, kind) as DocumentShelf<unknown>, part);
  for (const run of runs) enter(store.runs(stored.id), run);
  for (const shortlist of shortlists) enter(store.shortlists(stored.id), shortlist);
  return stored;
}

/** A project of the same name is told apart in the list. */
function named<T extends { readonly name: string }>(document: T, store: Store): T {
  const taken = new Set(store.projects.list().map((other) => other.document.name));
  const names = [document.name, ...Array.from(taken, (_, i) => `${document.name.slice(0, 110)} (${i + 2})`)];
  return { ...document, name: names.find((name) => !taken.has(name)) ?? document.name };
}

/** Runs and vehicles that name a part which was deleted before the bundle was made. */
function warningsOf({ project, parts, runs }: BundleContent): Warning[] {
  const there = new Set(parts.map(({ id }) => id));
  const lacks = (document: unknown) => linksOf(document).some((id) => !there.has(id));
  const lacking = [project, ...runs].filter(({ document }: { document: Run | StoredDocument<unknown>["document"] }) =>
    lacks(document),
  );
  return lacking.map(({ document: { name } }) =>
    warning({
      code: "bundle.deleted-part",
      where: name,
      found: "It names a part that had been deleted before the project was saved",
      needed: "",
      mend: "Choose another part",
    }),
  );
}
