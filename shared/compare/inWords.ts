const COUNT_WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** "three", and figures beyond ten. */
export const countInWords = (count: number): string => COUNT_WORDS[count] ?? `${count}`;

/** "a", "a and b", "a, b and c". */
export function inWords(names: readonly string[]): string {
  if (names.length < 2) return names.join("");
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
