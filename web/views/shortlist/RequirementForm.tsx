import { project } from "../../app/session.ts";
import { bound } from "../../forms/bound.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { keyOf, unpaired, withDemand } from "./demands.ts";
import { DEMAND_GROUPS, type DemandField } from "./requirementFields.ts";
import {
  asternShare,
  chosenWater,
  confidence,
  counted,
  demands,
  hotelPower,
  position,
  thrusters,
  water,
  weights,
} from "./shortlistState.ts";
import { WEIGHED } from "./weights.ts";

/** What the thrusters must do and may take. Empty fields ask nothing. */
export function RequirementForm() {
  return (
    <>
      <p class="hint">
        A field that is left empty asks nothing.
        {project.value?.document.requirement !== undefined &&
          " What stands here to begin with is stated by the project."}
      </p>
      <div class="form-grid">
        <SelectField
          label="Position on the vehicle"
          {...bound(position)}
          options={["horizontal", "vertical", "sideways"].map((value) => ({ value, label: value }))}
        />
        <QuantityField
          label="Equal thrusters that run together"
          dimension="number"
          value={thrusters.value}
          onChange={(count) => {
            thrusters.value = count === null ? null : Math.round(count);
          }}
          min={1}
          max={64}
        />
        <QuantityField
          label="Hotel load"
          symbol="P_h"
          dimension="power"
          unit="W"
          {...bound(hotelPower)}
          min={0}
          optional
          help="Lamps, camera, computer, all the time. Left empty, none is counted."
        />
      </div>
      {DEMAND_GROUPS.map(({ title, fields }) => (
        <fieldset key={title} class="shortlist-group">
          <legend>{title}</legend>
          <div class="form-grid">
            {fields.map((field) => (
              <DemandInput key={keyOf(field)} field={field} />
            ))}
          </div>
        </fieldset>
      ))}
      {unpaired(demands.value).map((sentence) => (
        <p key={sentence} class="warning">
          {sentence}
        </p>
      ))}
      <Judging />
    </>
  );
}

function DemandInput({ field }: { readonly field: DemandField }) {
  const key = keyOf(field);
  const fromZero = field.dimension === "fraction" || key === "depth";
  const bounds = {
    ...(fromZero ? { min: 0 } : { positive: true }),
    ...(field.max === undefined ? {} : { max: field.max }),
  };
  return (
    <QuantityField
      label={field.label}
      symbol={field.symbol || undefined}
      dimension={field.dimension}
      unit={field.unit}
      value={demands.value[key] ?? null}
      {...bounds}
      optional
      help={field.help}
      onChange={(si) => {
        demands.value = withDemand(demands.value, key, si);
      }}
    />
  );
}

const SURE = [
  { value: "best", label: "By the best estimate" },
  { value: "0.9", label: "With 90\u202f% probability" },
  { value: "0.95", label: "With 95\u202f% probability" },
] as const;

/** How sure each demand must be, what mass and price are of, and the water. */
function Judging() {
  return (
    <div class="form-grid">
      <SelectField
        label="Each demand must hold"
        value={confidence.value === null ? "best" : (String(confidence.value) as "0.9" | "0.95")}
        options={SURE}
        help="With the uncertainty of coefficients and parts counted."
        onChange={(sure) => {
          confidence.value = sure === "best" ? null : Number(sure);
        }}
      />
      <SelectField
        label="Mass and price are of"
        {...bound(counted)}
        options={[
          { value: "thruster", label: "one thruster: motor, controller, gear, propeller" },
          { value: "all", label: "all thrusters with pack and tether" },
        ]}
      />
      <QuantityField
        label="Astern, where nothing was measured"
        dimension="fraction"
        unit="%"
        {...bound(asternShare)}
        positive
        max={1}
        optional
        help="Share of the coefficients ahead, a guess known to 20 %. Left empty, such a propeller pushes ahead only."
      />
      <FluidField
        label="Working water"
        value={water.value}
        onChange={(state) => {
          chosenWater.value = state;
        }}
      />
    </div>
  );
}

/** What counts for more among those that meet. */
export function WeightSliders() {
  return (
    <>
      <p class="hint">Those that meet every demand are ranked by these; only the ratios count, 0 leaves one out.</p>
      <div class="form-grid">
        {WEIGHED.map(({ key, label, better }) => (
          <Slider
            key={key}
            label={label}
            value={weights.value[key]}
            min={0}
            max={5}
            step={1}
            help={better}
            onChange={(weight) => {
              weights.value = { ...weights.value, [key]: weight };
            }}
          />
        ))}
      </div>
    </>
  );
}
