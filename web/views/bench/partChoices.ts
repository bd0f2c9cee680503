import type { Option } from "../../forms/SelectField.tsx";

/** The parts of one kind as a list to choose from, the empty choice first. */
export function partChoices(
  stored: readonly { readonly id: string; readonly document: { readonly name: string } }[],
  none: string,
): Option<string>[] {
  return [{ value: "", label: none }, ...stored.map(({ id, document }) => ({ value: id, label: document.name }))];
}
