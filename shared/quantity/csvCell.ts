/** More digits than any number is known to, without the tail of binary arithmetic. */
const DIGITS = 12;

/**
 * One cell of comma-separated text (RFC 4180). A number stays a number, also a negative one; a text that a spreadsheet
 * would run as a formula gets an apostrophe in front.
 */
export function csvCell(content: string | number | null): string {
  if (content === null) return "";
  if (typeof content === "number") return String(Number(content.toPrecision(DIGITS)));
  const guarded = /^[\s]*[=+\-@\u2212]|^[\t\r\n]/.test(content) ? `'${content}` : content;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** Rows as comma-separated text. */
export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");
}
