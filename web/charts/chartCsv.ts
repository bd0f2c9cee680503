import type { ChartSpec } from "./chartSpec.ts";
import { chartTable } from "./chartTable.ts";

/**
 * The table of a chart as comma-separated text (RFC 4180). Numbers keep more digits than any
 * of them is known to, without the tail of binary arithmetic. A text that a spreadsheet would
 * run as a formula gets an apostrophe in front.
 */
export function chartCsv(spec: ChartSpec): string {
  const { head, rows } = chartTable(spec);
  return [head, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

const DIGITS = 12;

/** One cell. A number stays a number, also a negative one; only texts can be formulas. */
export function cell(content: string | number | null): string {
  if (content === null) return "";
  if (typeof content === "number") return String(Number(content.toPrecision(DIGITS)));
  const guarded = /^[\s]*[=+\-@\u2212]|^[\t\r\n]/.test(content) ? `'${content}` : content;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** A file name without characters that a file system refuses. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    .normalize("NFKD")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase();
  return `${plain || "chart"}.${ending}`;
}
