import type { ChartSeries } from "./chartSpec.ts";
import { kindWords } from "./seriesStyle.ts";

/** One line of a legend: a series, or the points and the fit of one thing together. */
export interface LegendEntry {
  readonly name: string;
  readonly words: string;
  readonly ids: readonly string[];
  /** The series whose marker and colour stand for the entry. */
  readonly shown: ChartSeries;
  /** A fit belongs to it: the marker is drawn on a line. */
  readonly fitted: boolean;
}

/** The entries of a legend in the order in which their first series come. */
export function legendEntries(series: readonly ChartSeries[]): LegendEntry[] {
  const groups = new Map<string, ChartSeries[]>();
  for (const one of series) {
    const key = one.legend === undefined ? `series ${one.id}` : `entry ${one.legend}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map(entryOf);
}

function entryOf(group: readonly ChartSeries[]): LegendEntry {
  const shown = group.find(({ kind }) => kind === "measured") ?? group[0]!;
  const fitted = shown.kind === "measured" && group.some(({ kind }) => kind === "fit");
  return {
    name: shown.legend ?? shown.name,
    words: fitted ? "measured, with fit; bars and band 95\u202f%" : kindWords(shown),
    ids: group.map(({ id }) => id),
    shown,
    fitted,
  };
}
