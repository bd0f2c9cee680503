import type { ColumnNature } from "./columnKinds.ts";

/** Name that stands before the number in a cell, with its mark: "rpm:". */
const NAME = /^\s*([A-Za-z_][\w .]*?\s*[:=])/;

/**
 * Puts cells that carry their names ("rpm:2300") in the order of the columns, because loggers that print names print
 * them in any order or leave some out. Made once for a log; undefined where the columns do not all have a name of their own.
 */
export function namedOrderOf(natures: readonly ColumnNature[]): ((cells: string[]) => string[] | null) | undefined {
  const columnOf = new Map(natures.map(({ affix }, column) => [affix?.prefix ?? "", column]));
  if (columnOf.size < natures.length || columnOf.has("")) return undefined;
  return (cells) => inOrder(cells, columnOf);
}

/** The cells in their places; null where they stand there already, or where one has no name that is known. */
function inOrder(cells: readonly string[], columnOf: ReadonlyMap<string, number>): string[] | null {
  const places = cells.map((cell) => columnOf.get(NAME.exec(cell)?.[1] ?? ""));
  if (cells.length === columnOf.size && places.every((place, i) => place === i)) return null;
  if (places.some((place) => place === undefined) || new Set(places).size < places.length) return null;
  const ordered = Array.from(columnOf, () => "");
  cells.forEach((cell, i) => {
    ordered[places[i]!] = cell;
  });
  return ordered;
}
