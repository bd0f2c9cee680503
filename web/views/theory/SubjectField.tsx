import { SelectField } from "../../forms/SelectField.tsx";
import { chooseSubject, subject, subjects } from "./subject.ts";

/** Which measured variant a card speaks of; the same for all cards. */
export function SubjectField() {
  if (subject.value === null) return null;
  return (
    <SelectField
      label="Variant"
      value={subject.value.name}
      options={subjects.value.map(({ name }) => ({ value: name, label: name }))}
      onChange={chooseSubject}
    />
  );
}
