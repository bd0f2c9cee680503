/** A text that a spreadsheet would run as a formula, or that stands for an empty cell, with or without apostrophes before it. */
const FORMULA = /^'*(?:\s*[=+\-@\u2212]|[\t\r\n]|(?:[–—?]|n\/?a|nan)$)/i;

/** `text` as a cell that no spreadsheet runs: an apostrophe in front where it looks like a formula. */
export function guardedText(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

/** The text behind the guard. */
export function unguardedText(cell: string): string {
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
}
