/** A moment as every screen writes it, in the reader's own time zone: "29 November 2026 at 23:43". */
export function momentText(moment: Date | string): string {
  return new Date(moment).toLocaleString("en-GB", { dateStyle: "long", timeStyle: "short" });
}
