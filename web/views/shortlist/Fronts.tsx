import type { Front } from "../../../shared/model/shortlistResult.ts";
import { Chart } from "../../charts/Chart.tsx";
import { frontChart } from "./frontCharts.ts";

/** One picture a pair of quantities that the parts state. */
export function ChartGroupOfFronts({ fronts }: { readonly fronts: readonly Front[] }) {
  const drawn = fronts.filter(({ points }) => points.length > 0);
  if (drawn.length === 0) return <p class="hint">The parts state neither mass nor price, or nothing meets.</p>;
  return (
    <>
      <p class="hint">Combinations of which no other is better in both quantities; walk them with the arrow keys.</p>
      <div class="shortlist-fronts">
        {drawn.map((front) => (
          <Chart key={`${front.x} ${front.y}`} spec={frontChart(front)} height={300} />
        ))}
      </div>
    </>
  );
}
