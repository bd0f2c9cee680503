import { addressOf } from "../../../app/route.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { bound, boundNumber } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import { Findings } from "../Findings.tsx";
import { SurfaceFields } from "../surface/SurfaceFields.tsx";
import { bladeSentence, loadPicture, powerRows, sectionPicture } from "./bladeModel.ts";
import {
  advanceSpeed,
  choosePropeller,
  chooseRate,
  polar,
  polarText,
  propeller,
  rotationRate,
  run,
  shaped,
  surface,
  told,
} from "./bladeState.ts";
import { StrengthPart } from "./StrengthPart.tsx";

/** What happens along one blade: load, sections, losses, stress. */
export function BladePanel() {
  return (
    <>
      {propeller.value === null ? (
        <p class="hint">
          No propeller has a blade shape yet. Add one on <a href={addressOf("parts")}>Parts</a>: typed, pasted from a
          spreadsheet or made from an outline.
        </p>
      ) : (
        <>
          <Fields />
          <PolarField />
          <Answer />
        </>
      )}
    </>
  );
}

function Answer() {
  const [now, asked] = [told.value, run.value];
  if (now === null || asked === null) return null;
  if ("problem" in now) return <p class="warning">{now.problem}</p>;
  return (
    <>
      <p role="status">{bladeSentence(now.solved, asked)}</p>
      <Warnings items={now.solved.warnings} />
      <div class="theory-pictures">
        <Chart spec={loadPicture(now.solved)} height={280} />
        <Chart spec={sectionPicture(now.solved)} height={280} />
      </div>
      <Findings caption="Where blade elements say the shaft power goes" rows={powerRows(now.solved)} />
      <StrengthPart />
    </>
  );
}

function PolarField() {
  const read = polar.value;
  return (
    <details>
      <summary>Lift and drag of the sections from a table of your own</summary>
      <TextField
        label="Polar, one row an angle of attack"
        {...bound(polarText)}
        lines={6}
        problem={"problem" in read ? read.problem : null}
        help="Columns: angle of attack (deg), C_L, C_D and, for several blocks, Re. Beyond its ends a stalled plate carries it on. Empty: the section model."
      />
    </details>
  );
}

function Fields() {
  return (
    <div class="form-grid">
      <SelectField
        label="Propeller"
        value={propeller.value!.id}
        options={shaped.value.map(({ id, document }) => ({ value: id, label: document.name }))}
        onChange={choosePropeller}
      />
      <QuantityField
        label="Rotation rate"
        symbol="n"
        dimension="rotationRate"
        unit="rpm"
        value={rotationRate.value}
        help="Negative turns it astern."
        onChange={(rate) => {
          if (rate !== null && rate !== 0) chooseRate(rate);
        }}
      />
      <QuantityField
        label="Speed through the water"
        symbol="V_A"
        dimension="speed"
        unit="m/s"
        {...boundNumber(advanceSpeed)}
        min={-50}
        max={50}
      />
      <SurfaceFields {...bound(surface)} />
    </div>
  );
}
