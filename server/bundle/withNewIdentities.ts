/** New identity of each old one. */
export type Identities = ReadonlyMap<string, string>;

/** Members that hold the identity of another document, or several by a key: motorId, instrumentIds. */
const LINK = /(?:^id|Id|Ids)$/;

/**
 * The document with every link to another document of the bundle led to its new identity. Links to what is not in the
 * bundle stay as they are: they name a part that was deleted, and go on doing so.
 */
export function withNewIdentities<T>(document: T, identities: Identities): T {
  return led(document, identities, false) as T;
}

function led(value: unknown, identities: Identities, isLink: boolean): unknown {
  if (typeof value === "string") return isLink ? (identities.get(value) ?? value) : value;
  if (Array.isArray(value)) return value.map((item) => led(item, identities, isLink));
  if (typeof value !== "object" || value === null) return value;
  const members = Object.entries(value).map(([key, member]) => [
    key,
    led(member, identities, isLink || LINK.test(key)),
  ]);
  return Object.fromEntries(members);
}

/** Identities that the links of a document name. */
export function linksOf(value: unknown, isLink = false): string[] {
  if (typeof value === "string") return isLink ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((item) => linksOf(item, isLink));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, member]) => linksOf(member, isLink || LINK.test(key)));
}
