import { useMemo, useState } from "preact/hooks";
import { type Cursor, carriedOver, cursorAfter } from "./chartCursor.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { spokenPoint } from "./pointWords.ts";

export interface DataCursor {
  readonly cursor: Cursor | null;
  /** The point it stands on, for the ear. */
  readonly spoken: string;
  /** Takes a key; false where the key means nothing to it. */
  readonly walk: (key: string) => boolean;
  readonly leave: () => void;
}

/** The keyboard's place among the points of a chart. */
export function useDataCursor(spec: ChartSpec, hidden: ReadonlySet<string>): DataCursor {
  const [placed, setPlaced] = useState<{ readonly at: Cursor; readonly on: ChartSpec } | null>(null);
  const cursor = useMemo(() => placed && carriedOver(placed.at, placed.on, spec), [placed, spec]);
  const series = spec.series.find(({ id }) => id === cursor?.seriesId);
  const isThere = cursor !== null && series?.points[cursor.index] !== undefined;
  return {
    cursor,
    spoken: isThere && series ? spokenPoint(spec, series, cursor.index) : "",
    walk: (key) => {
      const next = cursorAfter(key, cursor, spec, hidden);
      if (next === undefined) return false;
      setPlaced(next && { at: next, on: spec });
      return true;
    },
    leave: () => setPlaced(null),
  };
}
