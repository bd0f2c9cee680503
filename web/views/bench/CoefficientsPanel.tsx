import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import { Fold } from "../../app/Fold.tsx";
import { wantedSection } from "../../app/sections.ts";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { powerHint } from "./benchModel.ts";
import { coefficientFacts } from "./coefficientsModel.ts";

interface CoefficientsPanelProps {
  readonly reduction: Reduction;
  readonly run: Run;
}

/** Every coefficient with its interval and what it means. */
export function CoefficientsPanel({ reduction, run }: CoefficientsPanelProps) {
  const hint = powerHint(reduction, run);
  const title = reduction.advance === null ? "Coefficients" : "Coefficients at rest in the water";
  return (
    <Fold id="bench-coefficients" title={title}>
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
      {run.recipe.fluidAssumed && (
        <p class="hint">
          In {describeFluid(run.recipe.fluid)}, which nobody stated: 1 % more density makes K<sub>T</sub> and C
          <sub>P</sub> 1 % smaller.{" "}
          <button type="button" class="quiet" onClick={() => (wantedSection.value = { id: "bench-setup" })}>
            State the water
          </button>
        </p>
      )}
      {hint !== "" && <p class="hint">{hint}</p>}
    </Fold>
  );
}
