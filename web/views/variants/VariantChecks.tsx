import { Swatch } from "../../charts/Swatch.tsx";
import { useChosen } from "../../forms/useChosen.ts";
import "./variantChecks.css";
import type { VariantRuns } from "./variantGroups.ts";
import { allGroups, groups, showVariant } from "./variantsState.ts";

/** Which variants are on show, here and on the other screens that show variants. */
export function VariantChecks() {
  if (allGroups.value.length < 2) return null;
  const shown = new Set(groups.value.map(({ name }) => name));
  return (
    <fieldset class="variant-checks">
      <legend>Variants on show</legend>
      {allGroups.value.map((group) => (
        <VariantCheck key={group.name} group={group} isShown={shown.has(group.name)} />
      ))}
    </fieldset>
  );
}

/** The last one on show can not be taken away, and its box says so again. */
function VariantCheck({ group: { name, style }, isShown }: { readonly group: VariantRuns; readonly isShown: boolean }) {
  const [checked, choose] = useChosen(isShown, (on) => showVariant(name, on));
  return (
    <label>
      <input type="checkbox" checked={checked} onChange={(event) => choose(event.currentTarget.checked)} />{" "}
      <Swatch kind="measured" style={style} /> {name}
    </label>
  );
}
