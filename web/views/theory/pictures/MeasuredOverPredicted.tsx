import { ChartGroup } from "../../../charts/ChartGroup.tsx";
import { bound } from "../../../forms/bound.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { shownName } from "../predictions/shownPrediction.ts";
import {
  chosenYardstick,
  hasRunsAtSpeed,
  residualAgainst,
  residualCharts,
  yardstick,
  yardsticks,
} from "../theoryState.ts";

/** What was measured, divided by one of the predictions. */
export function MeasuredOverPredicted() {
  const against = yardstick.value;
  if (against === null)
    return <p class="hint">Add a prediction below: a published series or blade elements to divide by.</p>;
  return (
    <>
      <div class="theory-controls">
        <SelectField
          label="Divided by"
          value={against.prediction.name}
          options={yardsticks.value.map((one) => ({ value: one.prediction.name, label: shownName(one) }))}
          onChange={(name) => {
            chosenYardstick.value = name;
          }}
        />
        {hasRunsAtSpeed.value && (
          <SelectField
            label="Laid out along"
            {...bound(residualAgainst)}
            options={[
              { value: "rotationRate", label: "Rotation rate" },
              { value: "advanceRatio", label: "Advance ratio" },
            ]}
          />
        )}
      </div>
      <ChartGroup specs={residualCharts.value} height={340} />
    </>
  );
}
