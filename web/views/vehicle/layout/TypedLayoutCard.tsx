import { QuantityField } from "../../../forms/QuantityField.tsx";
import { chosenBuild } from "../build/buildState.ts";
import { LayoutResults } from "./LayoutResults.tsx";
import { limitOf, typedLayout, typeLimit } from "./typedLayout.ts";

/** What the layout could do with thrusts that are typed: before the drives are known, or to see what more would bring. */
export function TypedLayoutCard() {
  const build = chosenBuild.value;
  const made = typedLayout.value;
  if (build === null || made === null) return null;
  return (
    <>
      <p class="hint">
        A sketch, not kept with the vehicle: what this layout reaches if each thruster made the thrust you type.
      </p>
      {build.drives.map(({ name }) => (
        <LimitFields key={name} drive={name} />
      ))}
      {"problem" in made ? (
        <p class="warning">{made.problem}</p>
      ) : (
        <LayoutResults name={build.name} {...made} basis="Limits of the thrusters are typed." />
      )}
    </>
  );
}

function LimitFields({ drive }: { readonly drive: string }) {
  const { forward, reverse, doubt } = limitOf(drive);
  return (
    <fieldset class="build-group">
      <legend>One thruster with {drive}</legend>
      <div class="form-grid">
        <QuantityField
          {...{ label: "Greatest thrust ahead", symbol: "T", dimension: "massAsForce", unit: "N", min: 0, max: 1e5 }}
          value={forward}
          onChange={(si) => si !== null && typeLimit(drive, { forward: si })}
        />
        <QuantityField
          {...{ label: "Greatest thrust astern", symbol: "T", dimension: "massAsForce", unit: "N", min: 0, max: 1e5 }}
          value={reverse}
          onChange={(si) => si !== null && typeLimit(drive, { reverse: si })}
        />
        <QuantityField
          {...{ label: "give or take", dimension: "fraction", unit: "%", min: 0, max: 1 }}
          help="Standard uncertainty of both, shared by the thrusters of this drive."
          value={doubt}
          onChange={(si) => si !== null && typeLimit(drive, { doubt: si })}
        />
      </div>
    </fieldset>
  );
}
