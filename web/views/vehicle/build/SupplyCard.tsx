import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { Caution } from "../../../app/Caution.tsx";
import { partOf, parts } from "../../../app/session.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { without } from "./buildModel.ts";
import { chosenBuild, editBuild } from "./buildState.ts";
import { PartsHint } from "./DrivesCard.tsx";
import { KeptQuantity } from "./KeptQuantity.tsx";
import { partChoices } from "./partChoices.ts";

/** What feeds the thrusters, and the state it is in. */
export function SupplyCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  const { supply, tether } = build;
  const carriesPower = partOf("tethers", tether?.tetherId)?.document.conductor !== undefined;
  return (
    <>
      <PartsHint />
      <div class="form-grid">
        <SelectField
          label="Pack"
          value={supply.packId}
          options={partChoices(parts.value.packs, supply.packId)}
          onChange={(packId) => editBuild((now) => ({ ...now, supply: { ...now.supply, packId } }), "pack")}
        />
        <SelectField
          label="Power comes"
          value={supply.throughTether ? "tether" : "aboard"}
          options={[
            { value: "aboard", label: "from the pack aboard" },
            { value: "tether", label: "through the tether", disabled: !carriesPower && !supply.throughTether },
          ]}
          help={carriesPower ? undefined : "Through the tether: choose one with power conductors under Tether first."}
          problem={supply.throughTether && !carriesPower ? "This vehicle has no tether with power conductors." : null}
          onChange={(from) =>
            editBuild((now) => ({ ...now, supply: { ...now.supply, throughTether: from === "tether" } }), "supply")
          }
        />
        <StateFields supply={supply} />
      </div>
      <Caution about="drive" />
    </>
  );
}

function StateFields({ supply }: { readonly supply: VehicleBuild["supply"] }) {
  const cells = partOf("packs", supply.packId)?.document.cells;
  const set = (key: "charge" | "temperature", si: number | null, what: string) =>
    editBuild(
      (now) => ({
        ...now,
        supply: si === null ? (without(now.supply, key) as VehicleBuild["supply"]) : { ...now.supply, [key]: si },
      }),
      what,
    );
  return (
    <>
      {cells !== undefined && (
        <KeptQuantity
          label="Charge left in the pack"
          symbol="s"
          dimension="fraction"
          unit="%"
          value={supply.charge ?? null}
          min={0}
          max={1}
          optional
          help="Left empty, the voltage as it was stated."
          onKeep={(share) => set("charge", share, "charge")}
        />
      )}
      <KeptQuantity
        label="Temperature of pack and wires"
        dimension="temperature"
        unit="°C"
        value={supply.temperature ?? null}
        min={233}
        max={343}
        optional
        help="Left empty, 20 °C. Cold packs sag more."
        onKeep={(kelvin) => set("temperature", kelvin, "temperature")}
      />
    </>
  );
}
