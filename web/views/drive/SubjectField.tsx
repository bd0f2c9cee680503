import { SelectField } from "../../forms/SelectField.tsx";
import { trains } from "./driveState.ts";
import { chooseSubject, subject } from "./subjectOfDrive.ts";

/** Which propeller a card speaks of; nothing to choose where there is one. */
export function SubjectField() {
  if (trains.value.length < 2) return null;
  return (
    <SelectField
      label="Propeller"
      value={subject.value?.inHand.name ?? ""}
      options={trains.value.map(({ inHand: { name } }) => ({ value: name, label: name }))}
      onChange={chooseSubject}
    />
  );
}
