import { bound } from "../../forms/bound.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { filterChoices, groupChoices } from "./grouping.ts";
import { groupBy, measuredFacts, onlyRuns } from "./variantsState.ts";

/** What the variants are made of: the names on the runs, or one filter over what is known of them. */
export function GroupingFields() {
  const facts = measuredFacts.value;
  if (facts.length < 2) return null;
  return (
    <div class="form-grid">
      <SelectField label="Groups made by" {...bound(groupBy)} options={groupChoices(facts)} />
      <SelectField label="Of" {...bound(onlyRuns)} options={filterChoices(facts)} />
    </div>
  );
}
