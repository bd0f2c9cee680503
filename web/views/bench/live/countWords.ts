/** A count with its thousands set apart, as they are read at a glance. */
export const spaced = (count: number) => count.toLocaleString("en").replaceAll(",", "\u202f");

/** "1 line", "2 310 lines". */
export function counted(count: number, one: string): string {
  return `${spaced(count)} ${one}${count === 1 ? "" : "s"}`;
}
