import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { chosenBuild, editBuild } from "./buildState.ts";
import { DoubtfulFields } from "./DoubtfulFields.tsx";
import { KeptText } from "./KeptText.tsx";

/** Mass, trim, hotel load, and how hull and propellers disturb each other. */
export function BodyCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  return (
    <>
      <p class="hint">“Give or take” is the standard uncertainty: two in three times the truth lies no further off.</p>
      <div class="form-grid build-broad">
        <DoubtfulFields
          {...{ label: "Mass with the water it encloses", symbol: "m", dimension: "mass", unit: "kg" }}
          help="Dry mass and what floods: the water between frames and inside shells moves along."
          value={build.mass}
          positive
          max={1e6}
          onKeep={(mass) => editBuild((now) => ({ ...now, mass }), "mass")}
        />
        <DoubtfulFields
          {...{ label: "Net buoyancy", dimension: "massAsForce", unit: "N" }}
          help="Buoyancy less weight in the working water, without payload; negative sinks. Hang it from a scale under water, or float it with weights until it hovers."
          value={build.netBuoyancy}
          min={-1e6}
          max={1e6}
          onKeep={(netBuoyancy) => editBuild((now) => ({ ...now, netBuoyancy }), "net buoyancy")}
        />
        <DoubtfulFields
          {...{ label: "Hotel load", symbol: "P_h", dimension: "power", unit: "W" }}
          help="Constant power of lamps, camera, computer."
          value={build.hotelPower}
          min={0}
          onKeep={(hotelPower) => editBuild((now) => ({ ...now, hotelPower }), "hotel load")}
        />
        <KeptText
          label="Note"
          optional
          lines={2}
          maxLength={4000}
          value={build.note}
          onKeep={(note) => editBuild((now) => ({ ...now, note }), "note")}
        />
      </div>
      <InteractionFields build={build} />
    </>
  );
}

function InteractionFields({ build: { interaction } }: { readonly build: VehicleBuild }) {
  return (
    <details>
      <summary>How hull and propellers disturb each other</summary>
      <p class="hint">
        The start is for thrusters that stand clear of the hull: common practice, no source. Close behind a body both
        are greater.
      </p>
      <div class="form-grid build-broad">
        <DoubtfulFields
          {...{ label: "Wake fraction", symbol: "w", dimension: "fraction", unit: "%" }}
          help="The water at the propeller moves this much slower than the vehicle."
          value={interaction.wakeFraction}
          min={-0.5}
          max={0.9}
          onKeep={(wakeFraction) =>
            editBuild((now) => ({ ...now, interaction: { ...now.interaction, wakeFraction } }), "wake fraction")
          }
        />
        <DoubtfulFields
          {...{ label: "Thrust deduction", symbol: "t", dimension: "fraction", unit: "%" }}
          help="Share of the thrust that the hull takes back, because the propeller sucks at it or blows on it."
          value={interaction.thrustDeduction}
          min={-0.5}
          max={0.9}
          onKeep={(thrustDeduction) =>
            editBuild((now) => ({ ...now, interaction: { ...now.interaction, thrustDeduction } }), "thrust deduction")
          }
        />
      </div>
    </details>
  );
}
