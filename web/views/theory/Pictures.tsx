import { formatQuantity } from "../../../shared/quantity/format.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { MILLIMETRE } from "../bench/shownUnits.ts";
import { EXAMPLE_DIAMETER } from "./exampleDisc.ts";
import { MeasuredOverPredicted } from "./pictures/MeasuredOverPredicted.tsx";
import { OpenWaterDiagrams } from "./pictures/OpenWaterDiagrams.tsx";
import { ThrustAgainstPower } from "./pictures/ThrustAgainstPower.tsx";
import { ThrustAgainstRate } from "./pictures/ThrustAgainstRate.tsx";
import { ThrustAgainstSpeed } from "./pictures/ThrustAgainstSpeed.tsx";
import { chosenDiameter, isExample, PICTURES, type PictureName, picture, showPicture } from "./theoryState.ts";

/** The picture that is chosen, with what belongs to it. */
export function Pictures() {
  return (
    <>
      {isExample.value && <DiameterField />}
      <PictureChoice />
      {picture.value === "power" && <ThrustAgainstPower />}
      {picture.value === "rate" && <ThrustAgainstRate />}
      {picture.value === "advance" && <OpenWaterDiagrams />}
      {picture.value === "speed" && <ThrustAgainstSpeed />}
      {picture.value === "residual" && <MeasuredOverPredicted />}
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
