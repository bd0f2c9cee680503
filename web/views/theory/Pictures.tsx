import { formatQuantity } from "../../../shared/quantity/format.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { ChartGroup } from "../../charts/ChartGroup.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { MILLIMETRE } from "../bench/shownUnits.ts";
import { EXAMPLE_DIAMETER } from "./exampleDisc.ts";
import { GivenField } from "./GivenField.tsx";
import { speedReasons, speedWarnings } from "./pictures/speedPicture.ts";
import { shownPredictions } from "./predictions/predictionsState.ts";
import { shownName } from "./predictions/shownPrediction.ts";
import { MERIT_RANGE } from "./theoryModel.ts";
import {
  atSpeed,
  chosenDiameter,
  chosenRate,
  chosenShape,
  chosenYardstick,
  diagramRate,
  hasRunsAtSpeed,
  held,
  heldNow,
  isExample,
  openWaterCharts,
  PICTURES,
  type PictureName,
  picture,
  powerChart,
  powerKind,
  rateChart,
  residualAgainst,
  residualCharts,
  shape,
  showPicture,
  speedChart,
  staticMerit,
  topSpeed,
  yardstick,
  yardsticks,
} from "./theoryState.ts";

/** The picture that is chosen, with what belongs to it. */
export function Pictures() {
  return (
    <>
      {isExample.value && <DiameterField />}
      <PictureChoice />
      {picture.value === "power" && <PowerPicture />}
      {picture.value === "rate" && <RatePicture />}
      {picture.value === "advance" && <OpenWaterPictures />}
      {picture.value === "speed" && <SpeedPicture />}
      {picture.value === "residual" && <ResidualPictures />}
    </>
  );
}

/** Nothing measured and no propeller among the parts: what is drawn is an example, until the one that counts is known. */
function DiameterField() {
  return (
    <div class="form-grid">
      <QuantityField
        label="Diameter of your propeller"
        symbol="D"
        dimension="length"
        unit="mm"
        value={null}
        positive
        max={1}
        optional
        help={`None is known yet, so an example of ${formatQuantity(EXAMPLE_DIAMETER, MILLIMETRE)} is drawn. A propeller under Parts or a reduced run is taken by itself.`}
        onChange={() => undefined}
        onCommit={(metres) => {
          if (metres !== null) chosenDiameter.value = metres;
        }}
      />
    </div>
  );
}

function PictureChoice() {
  return (
    <fieldset class="row theory-choice">
      <legend>Picture</legend>
      {(Object.keys(PICTURES) as PictureName[]).map((name) => (
        <label key={name}>
          <input
            type="radio"
            name="theory-picture"
            checked={picture.value === name}
            onChange={() => showPicture(name)}
          />{" "}
          {PICTURES[name]}
        </label>
      ))}
    </fieldset>
  );
}

function MeritSlider() {
  return (
    <Slider
      label="Stated static merit"
      symbol="FM"
      value={staticMerit.value}
      min={MERIT_RANGE.low}
      max={MERIT_RANGE.high}
      step={MERIT_RANGE.step}
      onChange={(merit) => {
        staticMerit.value = merit;
      }}
    />
  );
}

function PowerPicture() {
  return (
    <>
      <div class="theory-controls">
        <MeritSlider />
        <fieldset class="row theory-choice">
          <legend>Power</legend>
          {(
            [
              ["shaftPower", "at the shaft"],
              ["electricalPower", "electrical"],
            ] as const
          ).map(([kind, label]) => (
            <label key={kind}>
              <input
                type="radio"
                name="theory-power"
                checked={powerKind.value === kind}
                onChange={() => {
                  powerKind.value = kind;
                }}
              />{" "}
              {label}
            </label>
          ))}
        </fieldset>
      </div>
      {powerChart.value && <Chart spec={powerChart.value} height={400} />}
    </>
  );
}

function RatePicture() {
  const spec = rateChart.value;
  return (
    <>
      <div class="theory-controls">
        <MeritSlider />
      </div>
      {spec !== null && spec.series.length > 0 ? (
        <Chart spec={spec} height={400} />
      ) : (
        <p class="hint">Nothing to draw yet: reduce a run on Bench, or add a prediction below.</p>
      )}
    </>
  );
}

function OpenWaterPictures() {
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
      {drawn.length === 0 && <p class="hint">Nothing to draw yet: reduce a run on Bench, or add a prediction below.</p>}
      {drawn.length > 0 && <ChartGroup specs={drawn} height={340} />}
    </>
  );
}

function SpeedPicture() {
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
          value={topSpeed.value}
          positive
          max={30}
          onChange={(speed) => {
            if (speed !== null) topSpeed.value = speed;
          }}
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
        <p class="hint">Nothing to draw yet: reduce a run with power on Bench, or add a prediction below.</p>
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

function ResidualPictures() {
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
            value={residualAgainst.value}
            options={[
              { value: "rotationRate", label: "Rotation rate" },
              { value: "advanceRatio", label: "Advance ratio" },
            ]}
            onChange={(along) => {
              residualAgainst.value = along;
            }}
          />
        )}
      </div>
      <ChartGroup specs={residualCharts.value} height={340} />
    </>
  );
}
