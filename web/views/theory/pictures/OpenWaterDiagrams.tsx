import { ChartGroup } from "../../../charts/ChartGroup.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { chosenRate, diagramRate, openWaterCharts } from "../theoryState.ts";
import { NothingToDraw } from "./NothingToDraw.tsx";

/** Thrust and torque coefficient and efficiency over the advance ratio. */
export function OpenWaterDiagrams() {
  const drawn = openWaterCharts.value;
  return (
    <>
      <div class="theory-controls">
        <QuantityField
          label="Rotation rate of blade elements"
          symbol="n"
          dimension="rotationRate"
          unit="rpm"
          value={diagramRate.value}
          positive
          help="A published series does not depend on it; blade elements follow the Reynolds number."
          onChange={(rate) => {
            if (rate !== null) chosenRate.value = rate;
          }}
        />
      </div>
      {drawn.length === 0 && <NothingToDraw needed="a run" />}
      {drawn.length > 0 && <ChartGroup specs={drawn} height={340} />}
    </>
  );
}
