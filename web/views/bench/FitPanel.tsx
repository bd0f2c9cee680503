import { useMemo } from "preact/hooks";
import type { CoefficientFit, Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { powerHint } from "./benchModel.ts";
import { fitAxis } from "./benchState.ts";
import { coefficientFacts, componentBars, scatterText } from "./coefficientsModel.ts";
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
  return (
    <>
      <section class="card" aria-labelledby="bench-coefficients">
        <h2 id="bench-coefficients">Coefficients</h2>
        <dl class="bench-facts">
          {coefficientFacts(reduction).map(({ symbol, name, value, meaning }) => (
            <div key={symbol}>
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
      <section class="card" aria-labelledby="bench-fit">
        <h2 id="bench-fit">Fit</h2>
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
      </section>
      <section class="card" aria-labelledby="bench-doubt">
        <h2 id="bench-doubt">Where the doubt comes from</h2>
        <Components name="Thrust coefficient" fit={reduction.thrustFit} />
        {reduction.powerFit !== null && <Components name="Power coefficient" fit={reduction.powerFit} />}
      </section>
    </>
  );
}

function Components({ name, fit }: { readonly name: string; readonly fit: CoefficientFit }) {
  return (
    <TableBox label={`${name}: causes of doubt`}>
      <table>
        <caption>{name}: share of the variance, standard uncertainties</caption>
        <tbody>
          {componentBars(fit).map((bar) => (
            <tr key={bar.name}>
              <th scope="row">{bar.name}</th>
              <td class="number">{bar.value}</td>
              <td class="bench-share">
                <span class="bench-bar" style={{ width: `${100 * bar.share}%` }} aria-hidden="true" />
              </td>
              <td class="number">{bar.shareText}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
