import { FACTOR_WORDS } from "../../../../shared/compare/factors/factorWords.data.ts";
import type { Anova } from "../../../../shared/model/anova.ts";
import { DESIGN_FACTORS, FactorName, SETTING_FACTORS } from "../../../../shared/model/factor.ts";
import { Fold } from "../../../app/Fold.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { capitalised } from "../../../app/words.ts";
import { Chart } from "../../../charts/Chart.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { anovaRows, effectRows, interactionPicture } from "./anovaModel.ts";
import { anovaTold, firstFactor, secondFactor } from "./anovaState.ts";

const FACTORS = [...DESIGN_FACTORS, ...SETTING_FACTORS].map((value) => ({
  value,
  label: capitalised(FACTOR_WORDS[value].title),
}));

/** Two factors at once, for instance finish and pitch: which of them matters, and whether one changes what the other does. */
export function AnovaPanel() {
  const told = anovaTold.value;
  return (
    <Fold id="variants-anova" title="Two factors at once" open={false}>
      <div class="form-grid">
        <SelectField
          label="First factor"
          value={firstFactor.value}
          options={FACTORS}
          onChange={(factor) => {
            firstFactor.value = FactorName.parse(factor);
          }}
        />
        <SelectField
          label="Second factor"
          value={secondFactor.value ?? ""}
          options={[{ value: "", label: "none" }, ...FACTORS]}
          onChange={(factor) => {
            secondFactor.value = factor === "" ? null : FactorName.parse(factor);
          }}
        />
      </div>
      {"problem" in told ? <p class="hint">{told.problem}</p> : <Told anova={told.anova} />}
    </Fold>
  );
}

function Told({ anova }: { readonly anova: Anova }) {
  const picture = interactionPicture(anova);
  return (
    <>
      <p role="status">{anova.sentence}</p>
      <Warnings items={anova.warnings} />
      {picture && <Chart spec={picture} height={300} />}
      <TableBox label="Analysis of variance">
        <table>
          <caption class="visually-hidden">Analysis of variance of the logarithms, sums of squares of type II</caption>
          <thead>
            <tr>
              {["Source", "Degrees of freedom", "Sum of squares", "Mean square", "F", "p"].map((head, at) => (
                <th key={head} scope="col" class={at > 0 ? "number" : ""}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {anovaRows(anova).map(([source, ...cells]) => (
              <tr key={source}>
                <th scope="row">{source}</th>
                {cells.map((cell, at) => (
                  <td key={at} class="number">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <ul>
        {effectRows(anova).map(({ name, ratio, p }) => (
          <li key={name}>
            {name}: × {ratio}, p {p} by Holm
          </li>
        ))}
      </ul>
    </>
  );
}
