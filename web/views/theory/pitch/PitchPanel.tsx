import type { BestPitchRequest } from "../../../../shared/model/bestPitch.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { boundNumber } from "../../../forms/bound.ts";
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
          {...boundNumber(advanceSpeed)}
          min={0}
          max={30}
          help="0 at bollard."
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

type Fixed = BestPitchRequest["fixed"];

/** The same numbers with another choice of which of them are settled. */
function settled(given: Fixed["given"], diameter: number, rotationRate: number): Fixed {
  if (given === "both") return { given, diameter, rotationRate };
  return given === "diameter" ? { given, diameter } : { given, rotationRate };
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
          fixed.value = settled(given, diameter, rotationRate);
        }}
      />
      {now.given !== "rotationRate" && <DiameterField now={now} />}
      {now.given !== "diameter" && <RateField now={now} />}
    </>
  );
}

function DiameterField({ now }: { readonly now: Exclude<Fixed, { given: "rotationRate" }> }) {
  return (
    <QuantityField
      label="Diameter"
      symbol="D"
      dimension="length"
      unit="mm"
      value={now.diameter}
      positive
      max={1}
      help={isExample.value ? "An example: no propeller is known yet." : undefined}
      onChange={(metres) => {
        if (metres !== null) fixed.value = { ...now, diameter: metres };
      }}
    />
  );
}

function RateField({ now }: { readonly now: Exclude<Fixed, { given: "diameter" }> }) {
  return (
    <QuantityField
      label="Rotation rate"
      symbol="n"
      dimension="rotationRate"
      unit="rpm"
      value={now.rotationRate}
      positive
      onChange={(rate) => {
        if (rate !== null) fixed.value = { ...now, rotationRate: rate };
      }}
    />
  );
}
