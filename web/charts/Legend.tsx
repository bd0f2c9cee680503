import type { ChartSeries } from "./chartSpec.ts";
import { Swatch } from "./Swatch.tsx";
import { kindWords } from "./seriesStyle.ts";

export interface LegendProps {
  readonly series: readonly ChartSeries[];
  readonly hidden: ReadonlySet<string>;
  readonly onToggle: (id: string) => void;
}

/** The series by name; pressing one takes it out of the picture or brings it back. */
export function Legend({ series, hidden, onToggle }: LegendProps) {
  return (
    <ul class="legend" aria-label="Series">
      {series.map((one) => {
        const { id, name, kind, style } = one;
        return (
          <li key={id}>
            <button
              type="button"
              class="legend-entry"
              aria-pressed={!hidden.has(id)}
              title={hidden.has(id) ? "Show" : "Hide"}
              onClick={() => onToggle(id)}
            >
              <Swatch kind={kind} style={style} />
              <span>
                {name}
                <span class="legend-kind"> {kindWords(one)}</span>
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
