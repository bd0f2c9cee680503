import { csvText } from "../../shared/quantity/csvCell.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { chartTable } from "./chartTable.ts";

/**
 * The table of a chart as comma-separated text (RFC 4180). Numbers keep more digits than any
 * of them is known to, without the tail of binary arithmetic. A text that a spreadsheet would
 * run as a formula gets an apostrophe in front.
 */
export function chartCsv(spec: ChartSpec): string {
  const { head, rows } = chartTable(spec);
  return csvText([head, ...rows]);
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
