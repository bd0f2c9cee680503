/** The first `length` UTF-16 units of a text; a character that would be cut in two is left out. */
export function shortened(text: string, length: number): string {
  return text.slice(0, length).replace(/[\ud800-\udbff]$/, "");
}
