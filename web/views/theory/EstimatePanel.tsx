import { TableBox } from "../../app/TableBox.tsx";
import { boundNumber } from "../../forms/bound.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { GivenField } from "./GivenField.tsx";
import { chosenFluid, fluid } from "./theoryFluid.ts";
import { MERIT_RANGE } from "./theoryModel.ts";
import {
  chosenDiameter,
  chosenNozzle,
  diameter,
  driveEfficiency,
  duty,
  following,
  isExample,
  nozzle,
  nozzleAreaRatio,
  staticMerit,
  voltage,
} from "./theoryState.ts";

/** Power, current and thrust that a stated static merit leads to. */
export function EstimatePanel() {
  return (
    <>
      <div class="form-grid">
        <QuantityField
          label="Static merit"
          symbol="FM"
          dimension="number"
          {...boundNumber(staticMerit)}
          min={MERIT_RANGE.low}
          max={MERIT_RANGE.high}
          help="Stated. The same as beside the pictures."
        />
        <DutyChoice />
        <DutyField />
        <DiameterField />
        <QuantityField
          label="Supply voltage"
          symbol="U"
          dimension="voltage"
          unit="V"
          {...boundNumber(voltage)}
          positive
        />
        <EfficiencySlider />
        <FluidField
          label="Water"
          value={fluid.value}
          onChange={(state) => {
            chosenFluid.value = state;
          }}
        />
        <NozzleFields />
      </div>
      <Following />
    </>
  );
}

function DutyChoice() {
  return (
    <SelectField
      label="Given"
      value={duty.value.given}
      options={[
        { value: "thrust", label: "The thrust I want" },
        { value: "electricalPower", label: "The electrical power I have" },
      ]}
      onChange={(given) => {
        duty.value = given === "thrust" ? { given, thrust: 20 } : { given: "electricalPower", electricalPower: 150 };
      }}
    />
  );
}

function DutyField() {
  const now = duty.value;
  if (now.given === "thrust")
    return (
      <GivenField
        given={now.given}
        value={now.thrust}
        onChange={(thrust) => {
          duty.value = { given: "thrust", thrust };
        }}
      />
    );
  return (
    <GivenField
      given="electricalPower"
      value={now.given === "electricalPower" ? now.electricalPower : now.shaftPower}
      onChange={(electricalPower) => {
        duty.value = { given: "electricalPower", electricalPower };
      }}
    />
  );
}

function DiameterField() {
  return (
    <QuantityField
      label="Diameter"
      symbol="D"
      dimension="length"
      unit="mm"
      value={diameter.value}
      positive
      max={1}
      help={isExample.value ? "An example: none has been stated or measured." : undefined}
      onChange={(metres) => {
        if (metres !== null) chosenDiameter.value = metres;
      }}
    />
  );
}

function EfficiencySlider() {
  return (
    <Slider
      label="Motor and controller efficiency"
      symbol="eta"
      unit="%"
      value={Math.round(driveEfficiency.value * 100)}
      min={20}
      max={95}
      step={1}
      help="Stated, not measured: shaft power over electrical power. The Drive screen works it out for a motor."
      onChange={(percent) => {
        driveEfficiency.value = percent / 100;
      }}
    />
  );
}

function NozzleFields() {
  return (
    <div>
      <label class="row">
        <input
          type="checkbox"
          checked={nozzle.value}
          onChange={(event) => {
            chosenNozzle.value = event.currentTarget.checked;
          }}
        />{" "}
        In a nozzle
      </label>
      {nozzle.value && (
        <QuantityField
          label="Exit area over disc area"
          symbol="sigma"
          dimension="number"
          {...boundNumber(nozzleAreaRatio)}
          positive
          max={4}
          help="The nozzle carries part of the thrust: the ideal at a given power rises by the cube root of 2σ."
        />
      )}
    </div>
  );
}

function Following() {
  const told = following.value;
  if (told === null) return null;
  return (
    <>
      <p role="status">{told.sentence}</p>
      {told.caution !== "" && <p class="hint">{told.caution}</p>}
      <TableBox label="Power, current and thrust that follow">
        <table>
          <caption class="visually-hidden">What follows from the stated merit</caption>
          <tbody>
            {told.rows.map(({ name, value, how }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td class="number">{value}</td>
                <td class="muted">{how}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}
