import { useMemo } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import { Chart } from "../../charts/Chart.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { AdvancePanel } from "./AdvancePanel.tsx";
import { BudgetPanel } from "./BudgetPanel.tsx";
import { powerHint } from "./benchModel.ts";
import { fitAxis } from "./benchState.ts";
import { coefficientFacts, scatterText } from "./coefficientsModel.ts";
import { FIT_AXES, residualChart, thrustFitChart } from "./fitCharts.ts";

interface FitPanelProps {
  readonly reduction: Reduction;
  readonly run: Run;
}

/** The coefficients, the line they come from, and what their doubt is made of. */
export function FitPanel({ reduction, run }: FitPanelProps) {
  const axis = fitAxis.value;
  const fit = useMemo(() => thrustFitChart(reduction, axis), [reduction, axis]);
  const residuals = useMemo(() => residualChart(reduction), [reduction]);
  const hint = powerHint(reduction, run);
  const { advance } = reduction;
  return (
    <>
      {advance !== null && <AdvancePanel reduction={reduction} advance={advance} recipe={run.recipe} />}
      <section class="card" aria-labelledby="bench-coefficients">
        <h2 id="bench-coefficients">{advance === null ? "Coefficients" : "Coefficients at rest in the water"}</h2>
        <dl class="bench-facts">
          {coefficientFacts(reduction).map(({ symbol, name, value, meaning }) => (
            <div key={name}>
              <dt>
                {name} <PrintedSymbol text={symbol} />
              </dt>
              <dd>
                <strong>{value}</strong> <span class="muted">{meaning}</span>
              </dd>
            </div>
          ))}
        </dl>
        {hint !== "" && <p class="hint">{hint}</p>}
      </section>
      {advance === null && (
        <section class="card" aria-labelledby="bench-fit">
          <h2 id="bench-fit">Fit</h2>
          <fieldset class="row bench-choice">
            <legend>Thrust against</legend>
            {FIT_AXES.map(({ id, label }) => (
              <label key={id}>
                <input type="radio" name="fit-axis" checked={id === axis} onChange={() => (fitAxis.value = id)} />{" "}
                {label}
              </label>
            ))}
          </fieldset>
          <Chart spec={fit} height={320} />
          <Chart spec={residuals} height={220} />
          <p class="muted">{scatterText(reduction.thrustFit)}</p>
        </section>
      )}
      {reduction.budget !== undefined && <BudgetPanel budget={reduction.budget} />}
    </>
  );
}
