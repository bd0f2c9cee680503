/** Each text once, with the names of what it is said of, in the order in which they first come. */
export function together<Item>(
  items: readonly Item[],
  nameOf: (item: Item) => string,
  textsOf: (item: Item) => readonly string[],
): readonly (readonly [text: string, names: readonly string[]])[] {
  const names = new Map<string, readonly string[]>();
  for (const item of items)
    for (const text of textsOf(item)) names.set(text, [...(names.get(text) ?? []), nameOf(item)]);
  return [...names];
}
