import type { ChartSeries, ChartSpec } from "./chartSpec.ts";
import { legendEntries } from "./legendEntries.ts";
import { Swatch } from "./Swatch.tsx";
import { tagsOf } from "./tags.ts";

export interface LegendProps {
  readonly series: readonly ChartSeries[];
  /** Curves carry numbers, told before the names here. */
  readonly numbered: ChartSpec["numbered"];
  readonly hidden: ReadonlySet<string>;
  /** Pressed: the series of one entry go out of the picture together, or come back. */
  readonly onToggle: (ids: readonly string[]) => void;
}

/** The series by name; pressing an entry takes it out of the picture or brings it back. */
export function Legend({ series, numbered, hidden, onToggle }: LegendProps) {
  const tags = tagsOf({ series, numbered: numbered ?? false });
  return (
    <ul class="legend" aria-label="Series">
      {legendEntries(series).map(({ name, words, ids, shown, fitted }) => {
        const out = ids.every((id) => hidden.has(id));
        const tag = tags.find((one) => ids.includes(one.series.id));
        return (
          <li key={ids[0]}>
            <button
              type="button"
              class="legend-entry"
              aria-pressed={!out}
              title={out ? "Show" : "Hide"}
              onClick={() => onToggle(ids)}
            >
              <Swatch kind={shown.kind} style={shown.style} fitted={fitted} />
              <span>
                {tag && <span class="legend-number">{tag.number}</span>}
                {name}
                <span class="legend-kind"> {words}</span>
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
