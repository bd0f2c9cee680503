import { useMemo } from "preact/hooks";
import { Chart } from "./Chart.tsx";
import type { ChartSeries, ChartSpec } from "./chartSpec.ts";
import { Legend } from "./Legend.tsx";
import { numberedNames } from "./tags.ts";
import { useHiddenSeries } from "./useHiddenSeries.ts";

interface ChartGroupProps {
  /** Pictures whose series of one id are the same thing; each has a y axis label of its own. */
  readonly specs: readonly ChartSpec[];
  readonly height: number;
}

/** Several pictures of the same things under one legend: a thing has one number and goes out of all of them at once. */
export function ChartGroup({ specs, height }: ChartGroupProps) {
  const { hidden, toggle } = useHiddenSeries();
  const { series, names, numbered } = useMemo(() => {
    const all = unionOf(specs);
    const known = numberedNames(all);
    return { series: all, names: known, numbered: specs.map((spec) => ({ ...spec, numbered: known })) };
  }, [specs]);
  return (
    <div class="chart-group">
      <Legend series={series} numbered={names} hidden={hidden} onToggle={toggle} />
      <div class="chart-group-pictures">
        {numbered.map((spec) => (
          <Chart key={spec.y.label} spec={spec} height={height} hiddenInGroup={hidden} />
        ))}
      </div>
    </div>
  );
}

/** Each series once, in the order of the pictures. */
function unionOf(specs: readonly ChartSpec[]): ChartSeries[] {
  const all = specs.flatMap(({ series }) => series);
  return all.filter(({ id }, at) => all.findIndex((one) => one.id === id) === at);
}
