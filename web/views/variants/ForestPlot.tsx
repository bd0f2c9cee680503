import { Swatch } from "../../charts/Swatch.tsx";
import { seriesStyle } from "../../charts/seriesStyle.ts";
import type { Forest, ForestRow } from "./variantsModel.ts";

interface ForestPlotProps {
  readonly forest: Forest;
  /** Factor that somebody claims; null where nobody does. */
  readonly claimed: number | null;
}

/** Ratios with their intervals on one axis, a line at "no change" and one at the claim. Each row says its numbers in words. */
export function ForestPlot({ forest, claimed }: ForestPlotProps) {
  const place = (value: number) => `${(100 * (value - forest.low)) / (forest.high - forest.low)}%`;
  return (
    <figure class="forest">
      <figcaption>
        Ratio to the baseline with its 95 % interval; the thin line is no change
        {claimed !== null && `, the dashed line the claim of ${claimed}, for thrust`}
      </figcaption>
      <ul>
        {forest.rows.map((row) => (
          <ForestLine key={row.id} row={row} forest={forest} place={place} claimed={claimed} />
        ))}
      </ul>
      <div class="forest-line forest-axis" aria-hidden="true">
        <span />
        <div class="forest-track">
          {forest.ticks.map((tick) => (
            <span key={tick} class="forest-tick" style={{ left: place(tick) }}>
              {String(Number(tick.toPrecision(6)))}
            </span>
          ))}
        </div>
        <span />
      </div>
    </figure>
  );
}

interface ForestLineProps extends ForestPlotProps {
  readonly row: ForestRow;
  readonly place: (value: number) => string;
}

function ForestLine({ row, place, claimed }: ForestLineProps) {
  const [low, high] = row.interval;
  const colour = `var(--series-${seriesStyle(row.style).colour})`;
  return (
    <li class="forest-line">
      <span class="forest-name">
        <Swatch kind="measured" style={row.style} /> {row.name}, <span class="muted">{row.of}</span>
      </span>
      <div class="forest-track" aria-hidden="true">
        <span class="forest-rule" style={{ left: place(1) }} />
        {claimed !== null && <span class="forest-rule forest-claim" style={{ left: place(claimed) }} />}
        <span
          class="forest-whisker"
          style={{ left: place(low), right: `calc(100% - ${place(high)})`, background: colour }}
        />
        <span class="forest-mark" style={{ left: place(row.value), background: colour }} />
      </div>
      <span class="forest-text">{row.text}</span>
    </li>
  );
}
