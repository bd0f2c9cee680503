/** "1 run", "3 runs". */
export function counts(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}

/** "a, b and c". */
export function joined(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** With a capital letter, as at the start of a sentence. */
export function capitalised(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
