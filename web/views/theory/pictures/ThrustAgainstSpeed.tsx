import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { boundNumber } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { GivenField } from "../GivenField.tsx";
import { shownPredictions } from "../predictions/predictionsState.ts";
import { shownName } from "../predictions/shownPrediction.ts";
import {
  atSpeed,
  chosenShape,
  diagramRate,
  held,
  heldNow,
  shape,
  speedChart,
  topSpeed,
  yardsticks,
} from "../theoryState.ts";
import { NothingToDraw } from "./NothingToDraw.tsx";
import { speedReasons, speedWarnings } from "./speedPicture.ts";

/** Thrust over the speed through the water, power or rotation rate held. */
export function ThrustAgainstSpeed() {
  const spec = speedChart.value;
  return (
    <>
      <div class="theory-controls">
        <HeldFields />
        <QuantityField
          label="Up to"
          symbol="V"
          dimension="speed"
          unit="m/s"
          {...boundNumber(topSpeed)}
          positive
          max={30}
        />
        <SelectField
          label="Fall with speed taken from"
          value={shape.value?.prediction.name ?? ""}
          options={[
            ...yardsticks.value.map((one) => ({ value: one.prediction.name, label: shownName(one) })),
            { value: "", label: "Momentum theory alone" },
          ]}
          help="Where a variant was not run at speed, its bollard point is carried on by this curve; the band says how far it may be off."
          onChange={(name) => {
            chosenShape.value = name;
          }}
        />
      </div>
      {spec?.series.some(({ kind }) => kind !== "limit") ? (
        <Chart spec={spec} height={400} />
      ) : (
        <NothingToDraw needed="a run with power" />
      )}
      <ul class="speed-reasons">
        {speedReasons(atSpeed.value).map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      <Warnings items={speedWarnings(atSpeed.value, shownPredictions.value)} />
    </>
  );
}

function HeldFields() {
  const now = heldNow.value;
  return (
    <>
      <SelectField
        label="Held fixed"
        value={now.given}
        options={[
          { value: "shaftPower", label: "Shaft power" },
          { value: "rotationRate", label: "Rotation rate" },
        ]}
        onChange={(given) => {
          held.value = given === "shaftPower" ? { given, shaftPower: 100 } : { given, rotationRate: diagramRate.value };
        }}
      />
      {now.given === "shaftPower" ? (
        <GivenField
          given={now.given}
          value={now.shaftPower}
          onChange={(shaftPower) => {
            held.value = { given: "shaftPower", shaftPower };
          }}
        />
      ) : (
        <GivenField
          given={now.given}
          value={now.rotationRate}
          onChange={(rotationRate) => {
            held.value = { given: "rotationRate", rotationRate };
          }}
        />
      )}
    </>
  );
}
