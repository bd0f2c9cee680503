import { useMemo } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { Fold } from "../../app/Fold.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { fitAxis } from "./benchState.ts";
import { scatterText } from "./coefficientsModel.ts";
import { FIT_AXES, residualChart, thrustFitChart } from "./fitCharts.ts";

/** The line that the thrust coefficient comes from, and how far each plateau lies from it. */
export function FitPanel({ reduction }: { readonly reduction: Reduction }) {
  const axis = fitAxis.value;
  const fit = useMemo(() => thrustFitChart(reduction, axis), [reduction, axis]);
  const residuals = useMemo(() => residualChart(reduction), [reduction]);
  return (
    <Fold id="bench-fit" title="Fit">
      <fieldset class="row bench-choice">
        <legend>Thrust against</legend>
        {FIT_AXES.map(({ id, label }) => (
          <label key={id}>
            <input type="radio" name="fit-axis" checked={id === axis} onChange={() => (fitAxis.value = id)} /> {label}
          </label>
        ))}
      </fieldset>
      <Chart spec={fit} height={320} />
      <Chart spec={residuals} height={220} />
      <p class="muted">{scatterText(reduction.thrustFit)}</p>
    </Fold>
  );
}
