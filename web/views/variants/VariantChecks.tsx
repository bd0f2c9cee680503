import { Swatch } from "../../charts/Swatch.tsx";
import "./variantChecks.css";
import { allGroups, groups, showVariant } from "./variantsState.ts";

/** Which variants are on show, here and on the other screens that show variants. */
export function VariantChecks() {
  if (allGroups.value.length < 2) return null;
  const shown = new Set(groups.value.map(({ name }) => name));
  return (
    <fieldset class="variant-checks">
      <legend>Variants on show</legend>
      {allGroups.value.map(({ name, style }) => (
        <label key={name}>
          <input
            type="checkbox"
            checked={shown.has(name)}
            onChange={(event) => showVariant(name, event.currentTarget.checked)}
          />{" "}
          <Swatch kind="measured" style={style} /> {name}
        </label>
      ))}
    </fieldset>
  );
}
