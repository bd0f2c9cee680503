import type { PartKind } from "../../shared/model/parts/partKinds.ts";
import { PartKind as PartKinds } from "../../shared/model/parts/partKinds.ts";

/** What an entry of a bundle is, told from its name alone; a name of no kind is in no bundle. */
export type EntryKind =
  | { readonly kind: "manifest" | "project" | "run" | "shortlist" }
  | { readonly kind: "part"; readonly of: PartKind }
  | { readonly kind: "file"; readonly sha256: string };

export const MANIFEST = "manifest.json";
export const PROJECT = "project.json";
export const partPath = (kind: PartKind, id: string) => `parts/${kind}/${id}.json`;
export const runPath = (id: string) => `runs/${id}.json`;
export const shortlistPath = (id: string) => `shortlists/${id}.json`;
export const filePath = (sha256: string) => `files/${sha256}`;

const ID = "[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}";
const PART = new RegExp(`^parts/([a-z]+)/${ID}\\.json$`);
const RUN = new RegExp(`^runs/${ID}\\.json$`);
const SHORTLIST = new RegExp(`^shortlists/${ID}\\.json$`);
const FILE = /^files\/([0-9a-f]{64})$/;

/** The kind of an entry, or undefined for a name that no bundle holds: a path that climbs out of a folder among them. */
export function entryKind(path: string): EntryKind | undefined {
  if (path === MANIFEST) return { kind: "manifest" };
  if (path === PROJECT) return { kind: "project" };
  if (RUN.test(path)) return { kind: "run" };
  if (SHORTLIST.test(path)) return { kind: "shortlist" };
  const part = PartKinds.safeParse(PART.exec(path)?.[1]);
  if (part.success) return { kind: "part", of: part.data };
  const sha256 = FILE.exec(path)?.[1];
  return sha256 === undefined ? undefined : { kind: "file", sha256 };
}
