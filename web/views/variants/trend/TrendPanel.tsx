import { FACTOR_WORDS } from "../../../../shared/compare/factors/factorWords.data.ts";
import type { NumberFactorName } from "../../../../shared/model/factor.ts";
import { NumberFactorName as NumberFactors } from "../../../../shared/model/factor.ts";
import { RunQuantityName as Quantities, type RunQuantityName } from "../../../../shared/model/trend.ts";
import { areaRatioOf } from "../../../../shared/propeller/series/areaRatioOf.ts";
import { Fold } from "../../../app/Fold.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { capitalised } from "../../../app/words.ts";
import { Chart } from "../../../charts/Chart.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { subjects } from "../../theory/subject.ts";
import { groups } from "../variantsState.ts";
import { optimumWords, QUANTITY_NAMES, trendPicture } from "./trendModel.ts";
import { trendFactor, trendQuantity, trendTold } from "./trendState.ts";

const FACTORS = NumberFactors.options.map((value) => ({ value, label: capitalised(FACTOR_WORDS[value].title) }));
const QUANTITIES = Quantities.options.map((value) => ({ value, label: QUANTITY_NAMES[value] }));

/** A quantity of the runs followed over a number: pitch, roughness, layer height. */
export function TrendPanel() {
  const told = trendTold.value;
  return (
    <Fold id="variants-trend" title="Trend over a number" open={false}>
      <div class="form-grid">
        <SelectField
          label="Over"
          value={trendFactor.value}
          options={FACTORS}
          onChange={(factor: NumberFactorName) => {
            trendFactor.value = factor;
          }}
        />
        <SelectField
          label="Of"
          value={trendQuantity.value}
          options={QUANTITIES}
          onChange={(quantity: RunQuantityName) => {
            trendQuantity.value = quantity;
          }}
        />
      </div>
      {"problem" in told ? (
        <p class="hint">{told.problem}</p>
      ) : (
        <>
          <p role="status">
            {told.trend.sentence} {told.trend.optimum !== null && optimumWords(told.trend, told.trend.optimum)}
          </p>
          <Chart spec={trendPicture(told.trend, styleOf, screw())} height={340} />
          <Warnings items={told.trend.warnings} />
        </>
      )}
    </Fold>
  );
}

function styleOf(variant: string): number {
  return groups.value.find(({ name }) => name === variant)?.style ?? 0;
}

/** The series propeller with the blades and area of the measured ones. */
function screw() {
  const propeller = subjects.value[0]?.propeller;
  const areaRatio = propeller === undefined ? null : areaRatioOf(propeller);
  if (propeller?.bladeCount === undefined || areaRatio === null) return null;
  return { blades: Math.max(2, propeller.bladeCount), areaRatio: Math.round(areaRatio * 100) / 100 };
}
