import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import { Fold } from "../../app/Fold.tsx";
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
      {hint !== "" && <p class="hint">{hint}</p>}
    </Fold>
  );
}
