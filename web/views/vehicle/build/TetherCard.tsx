import { Tether, type TetherMotion } from "../../../../shared/model/vehicle/tether.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";
import { partOf, parts } from "../../../app/session.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { chosenBuild, editBuild } from "./buildState.ts";
import { KeptQuantity } from "./KeptQuantity.tsx";
import { NONE, partChoices } from "./partChoices.ts";

const DragOfTether = Tether.pick({ normalDragCoefficient: true, tangentialDragCoefficient: true });

/** A build with another tether, or with none. A pack ashore needs one. */
function withTether(build: VehicleBuild, tetherId: string): VehicleBuild {
  if (tetherId === NONE) {
    const { tether: _gone, ...rest } = build;
    return { ...rest, supply: { ...build.supply, throughTether: false } };
  }
  const start = { drag: DragOfTether.parse({}), motion: "bothEnds" as const };
  return { ...build, tether: { ...start, ...build.tether, tetherId } };
}

/** The cable in the water. How much of it is out belongs to the scenario. */
export function TetherCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  const { tether } = build;
  const cable = partOf("tethers", tether?.tetherId)?.document;
  return (
    <>
      <div class="form-grid">
        <SelectField
          label="Tether"
          value={tether?.tetherId ?? NONE}
          options={partChoices(parts.value.tethers, tether?.tetherId, "None: the vehicle swims free")}
          onChange={(id) => editBuild((now) => withTether(now, id), "tether")}
        />
        {tether && <TetherFields tether={tether} />}
      </div>
      {cable && (
        <p class="hint">
          {formatNumber(cable.diameter * 1000)} mm thick;{" "}
          {cable.weightInWater === undefined || cable.weightInWater === 0
            ? "neutral in water as far as is stated"
            : `${formatNumber(Math.abs(cable.weightInWater))} N/m ${cable.weightInWater > 0 ? "heavy" : "floating"} in water`}
          ; {cable.conductor ? "carries power" : "carries no power"}. Its drag grows with thickness and length: often it
          is more than that of the vehicle.
        </p>
      )}
    </>
  );
}

function TetherFields({ tether }: { readonly tether: NonNullable<VehicleBuild["tether"]> }) {
  const set = (change: Partial<NonNullable<VehicleBuild["tether"]>>, what: string) =>
    editBuild((now) => (now.tether ? { ...now, tether: { ...now.tether, ...change } } : now), what);
  const { normalDragCoefficient, tangentialDragCoefficient } = tether.drag;
  return (
    <>
      <KeptQuantity
        label="Drag coefficient across"
        symbol="C_n"
        dimension="number"
        value={normalDragCoefficient}
        positive
        max={10}
        help="1.2 for a smooth round tether at rest in itself, 1.5 to 2.5 where it strums."
        onKeep={(value) =>
          value !== null && set({ drag: { ...tether.drag, normalDragCoefficient: value } }, "drag of the tether")
        }
      />
      <KeptQuantity
        label="Drag coefficient along"
        symbol="C_t"
        dimension="number"
        value={tangentialDragCoefficient}
        min={0}
        max={1}
        help="On the wetted surface; 0.01 to 0.02 for cables."
        onKeep={(value) =>
          value !== null && set({ drag: { ...tether.drag, tangentialDragCoefficient: value } }, "drag of the tether")
        }
      />
      <SelectField
        label="While the vehicle swims"
        value={tether.motion}
        options={[
          { value: "bothEnds", label: "the boat keeps pace with it" },
          { value: "upperEndFixed", label: "the upper end stays where it is" },
        ]}
        onChange={(motion: TetherMotion) => set({ motion }, "motion of the tether")}
      />
    </>
  );
}
