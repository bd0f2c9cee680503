import type { ForceOutline } from "../../../shared/model/vehicle/layoutAnswer.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";

/** What a report is made of; pure data, drawn by `ReportSheet.tsx`. */
export type ReportBlock =
  | { readonly kind: "text"; readonly text: string; readonly strong?: boolean }
  | { readonly kind: "heading"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | ReportTable
  | { readonly kind: "picture"; readonly spec: ChartSpec }
  | { readonly kind: "outlines"; readonly outlines: readonly ForceOutline[] }
  | { readonly kind: "commands"; readonly lines: readonly string[] };

export interface ReportTable {
  readonly kind: "table";
  readonly label: string;
  readonly heads: readonly string[];
  /** The first cell of a row is its name. */
  readonly rows: readonly (readonly string[])[];
}

export const text = (words: string, strong = false): ReportBlock => ({ kind: "text", text: words, strong });
export const heading = (words: string): ReportBlock => ({ kind: "heading", text: words });
export const list = (items: readonly string[]): ReportBlock[] => (items.length === 0 ? [] : [{ kind: "list", items }]);

/** A table, or nothing where it has no row. */
export const table = (of: Omit<ReportTable, "kind">): ReportBlock[] =>
  of.rows.length === 0 ? [] : [{ kind: "table", ...of }];

/** A picture, or nothing where it shows nothing. */
export const picture = (spec: ChartSpec | null): ReportBlock[] =>
  spec?.series.some(({ points }) => points.length > 0) ? [{ kind: "picture", spec }] : [];

/** The same sentence once, in the order of first mention. */
export const once = (sentences: readonly string[]): string[] =>
  [...new Set(sentences)].filter((sentence) => sentence !== "");
