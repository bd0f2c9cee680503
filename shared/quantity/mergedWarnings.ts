import type { Warning } from "./warning.ts";

/**
 * Each warning once: those of one code that say the same of several places are one that names all of them, in the order in
 * which they first came.
 *
 * @example mergedWarnings([{ code: "a.b", where: "x", message: "m" }, { code: "a.b", where: "y", message: "m" }])[0].where // x; y
 */
export function mergedWarnings(warnings: readonly Warning[]): Warning[] {
  const places = new Map<string, { readonly first: Warning; readonly where: Set<string> }>();
  for (const one of warnings) {
    const key = JSON.stringify([one.code, one.message]);
    const known = places.get(key) ?? { first: one, where: new Set<string>() };
    known.where.add(one.where);
    places.set(key, known);
  }
  return [...places.values()].map(({ first, where }) => ({ ...first, where: [...where].join("; ") }));
}
