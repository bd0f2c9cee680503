import type { BestPitchRequest } from "../../../../shared/model/bestPitch.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { EXAMPLE_DIAMETER } from "../exampleDisc.ts";
import { Findings } from "../Findings.tsx";
import { GivenField } from "../GivenField.tsx";
import { addPrediction, predictions } from "../predictions/predictionsState.ts";
import { SeriesFields } from "../series/SeriesFields.tsx";
import { pitchPicture, pitchRows, pitchSentence, predictionOfPitch } from "./pitchModel.ts";
import { advanceSpeed, chooseSeries, duty, fixed, fixedNow, found, isExample, request, series } from "./pitchState.ts";

/** The pitch of a series propeller that does a duty with the least power, or makes the most of a power. */
export function PitchPanel() {
  return (
    <>
      <div class="form-grid">
        <SeriesFields value={series.value} onChange={chooseSeries} />
        <DutyFields />
        <FixedFields />
        <QuantityField
          label="Advance speed"
          symbol="V_A"
          dimension="speed"
          unit="m/s"
          value={advanceSpeed.value}
          min={0}
          max={30}
          help="0 at bollard."
          onChange={(speed) => {
            if (speed !== null) advanceSpeed.value = speed;
          }}
        />
      </div>
      <Answer />
    </>
  );
}

function Answer() {
  const [told, asked] = [found.value, request.value];
  if ("problem" in told || asked === null) return <p class="hint">{"problem" in told ? told.problem : ""}</p>;
  const { result } = told;
  return (
    <>
      <p role="status">{pitchSentence(result, asked)}</p>
      <Warnings items={result.warnings} />
      {result.state === "found" && (
        <>
          {result.candidates.length > 1 && <Chart spec={pitchPicture(result, asked)} height={280} />}
          <Findings caption="The propeller that does it" rows={pitchRows(result)} />
          <div class="row">
            <button
              type="button"
              disabled={predictions.value.some(({ name }) => name === predictionOfPitch(result, asked.series).name)}
              onClick={() => void addPrediction(predictionOfPitch(result, asked.series))}
            >
              Lay it over the measurements
            </button>
          </div>
        </>
      )}
    </>
  );
}

function DutyFields() {
  const now = duty.value;
  return (
    <>
      <SelectField
        label="It is to"
        value={now.given}
        options={[
          { value: "thrust", label: "make a thrust" },
          { value: "shaftPower", label: "use a shaft power" },
        ]}
        onChange={(given) => {
          duty.value = given === "thrust" ? { given, thrust: 20 } : { given, shaftPower: 100 };
        }}
      />
      {now.given === "thrust" ? (
        <GivenField
          given={now.given}
          value={now.thrust}
          onChange={(thrust) => {
            duty.value = { given: "thrust", thrust };
          }}
        />
      ) : (
        <GivenField
          given={now.given}
          value={now.shaftPower}
          onChange={(shaftPower) => {
            duty.value = { given: "shaftPower", shaftPower };
          }}
        />
      )}
    </>
  );
}

function FixedFields() {
  const now = fixedNow.value;
  const diameter = now.given === "rotationRate" ? EXAMPLE_DIAMETER : now.diameter;
  const rotationRate = now.given === "diameter" ? 50 : now.rotationRate;
  return (
    <>
      <SelectField
        label="Settled already"
        value={now.given}
        options={[
          { value: "diameter", label: "the diameter" },
          { value: "rotationRate", label: "the rotation rate" },
          { value: "both", label: "both" },
        ]}
        onChange={(given) => {
          fixed.value = {
            diameter: { given: "diameter", diameter },
            rotationRate: { given: "rotationRate", rotationRate },
            both: { given: "both", diameter, rotationRate },
          }[given] as BestPitchRequest["fixed"];
        }}
      />
      {now.given !== "rotationRate" && (
        <QuantityField
          label="Diameter"
          symbol="D"
          dimension="length"
          unit="mm"
          value={diameter}
          positive
          max={1}
          help={isExample.value ? "An example: no propeller is known yet." : undefined}
          onChange={(metres) => {
            if (metres !== null) fixed.value = { ...now, diameter: metres };
          }}
        />
      )}
      {now.given !== "diameter" && (
        <QuantityField
          label="Rotation rate"
          symbol="n"
          dimension="rotationRate"
          unit="rpm"
          value={rotationRate}
          positive
          onChange={(rate) => {
            if (rate !== null) fixed.value = { ...now, rotationRate: rate };
          }}
        />
      )}
    </>
  );
}
