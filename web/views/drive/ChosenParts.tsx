import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { boundCount, boundNumber } from "../../forms/bound.ts";
import { FluidField } from "../../forms/FluidField.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { type Option, SelectField } from "../../forms/SelectField.tsx";
import {
  choosePart,
  chosenFluid,
  controller,
  fluid,
  gear,
  hotelPower,
  motor,
  pack,
  type TypedPropeller,
  tether,
  thrusters,
  typed,
} from "./driveChoices.ts";
import { StateFields } from "./StateFields.tsx";

/** Motor, controller, gear, supply, number of thrusters, hotel load, water, and the state they are in. */
export function ChosenParts() {
  const { motors, packs } = parts.value;
  return (
    <div class="drive-card">
      {(motors.length === 0 || packs.length === 0) && (
        <p class="hint">
          A motor and a pack are needed. <a href={addressOf("parts")}>Add them under Parts.</a>
        </p>
      )}
      <div class="form-grid">
        <DriveTrain />
        <Loads />
        <FluidField
          label="Working water"
          value={fluid.value}
          onChange={(state) => {
            chosenFluid.value = state;
          }}
        />
      </div>
      <StateFields />
      <details>
        <summary>Type the coefficients of another propeller</summary>
        <TypedFields />
      </details>
    </div>
  );
}

function DriveTrain() {
  const { motors, controllers, packs, tethers, gears } = parts.value;
  const powered = tethers.filter(({ document }) => document.conductor !== undefined);
  return (
    <>
      <SelectField
        label="Motor"
        value={motor.value?.id ?? ""}
        options={choices(motors)}
        onChange={(id) => choosePart("motor", id)}
      />
      <SelectField
        label="Controller"
        value={controller.value?.id ?? "none"}
        options={[{ value: "none", label: "None: no resistance, no limit" }, ...choices(controllers)]}
        onChange={(id) => choosePart("controller", id)}
      />
      <SelectField
        label="Pack"
        value={pack.value?.id ?? ""}
        options={choices(packs)}
        onChange={(id) => choosePart("pack", id)}
      />
      {powered.length > 0 && (
        <SelectField
          label="Power comes"
          value={tether.value?.id ?? "none"}
          options={[
            { value: "none", label: "from the pack aboard" },
            ...powered.map(({ id, document }) => ({ value: id, label: `through ${document.name}` })),
          ]}
          onChange={(id) => choosePart("tether", id)}
        />
      )}
      {gears.length > 0 && (
        <SelectField
          label="Gear"
          value={gear.value?.id ?? "none"}
          options={[{ value: "none", label: "None: propeller on the motor shaft" }, ...choices(gears)]}
          onChange={(id) => choosePart("gear", id)}
        />
      )}
    </>
  );
}

/** What the pack has to feed. */
function Loads() {
  return (
    <>
      <QuantityField
        label="Equal thrusters on this supply"
        dimension="number"
        {...boundCount(thrusters)}
        min={1}
        max={64}
        help="All at the same throttle."
      />
      <QuantityField
        label="Hotel load"
        symbol="P_h"
        dimension="power"
        unit="W"
        {...boundNumber(hotelPower)}
        min={0}
        help="Constant power of lamps, camera, computer."
      />
    </>
  );
}

const EXAMPLE: TypedPropeller = { name: "typed", diameter: 0.076, thrustCoefficient: 0.2, torqueCoefficient: null };

/** A propeller by its coefficients alone, once one is wanted. */
function TypedFields() {
  if (typed.value !== null) return <CoefficientFields now={typed.value} />;
  return (
    <button
      type="button"
      onClick={() => {
        typed.value = EXAMPLE;
      }}
    >
      Add a propeller by its coefficients
    </button>
  );
}

function CoefficientFields({ now }: { readonly now: TypedPropeller }) {
  const set = (change: Partial<TypedPropeller>) => {
    typed.value = { ...now, ...change };
  };
  return (
    <div class="form-grid">
      <QuantityField
        label="Diameter"
        symbol="D"
        dimension="length"
        unit="mm"
        value={now.diameter}
        positive
        max={1}
        onChange={(diameter) => diameter !== null && set({ diameter })}
      />
      <QuantityField
        label="Thrust coefficient"
        symbol="K_T"
        dimension="number"
        value={now.thrustCoefficient}
        positive
        max={2}
        onChange={(thrustCoefficient) => thrustCoefficient !== null && set({ thrustCoefficient })}
      />
      <QuantityField
        label="Torque coefficient"
        symbol="K_Q"
        dimension="number"
        value={now.torqueCoefficient}
        positive
        max={1}
        optional
        help="Left empty, it is worked out from the stated static merit."
        onChange={(torqueCoefficient) => set({ torqueCoefficient })}
      />
      <button
        type="button"
        class="quiet"
        onClick={() => {
          typed.value = null;
        }}
      >
        Take it away
      </button>
    </div>
  );
}

function choices(
  stored: readonly { readonly id: string; readonly document: { readonly name: string } }[],
): Option<string>[] {
  return stored.map(({ id, document }) => ({ value: id, label: document.name }));
}
