import type { Option } from "../../../forms/SelectField.tsx";

/** Value of the choice that takes a part away. */
export const NONE = "none";

type Stored = readonly { readonly id: string; readonly document: { readonly name: string } }[];

/** Parts to choose from; one that was chosen and is gone from the parts says so; `none` names the choice of none. */
export function partChoices(stored: Stored, chosen: string | undefined, none?: string): Option<string>[] {
  const isGone = chosen !== undefined && !stored.some(({ id }) => id === chosen);
  return [
    ...(none === undefined ? [] : [{ value: NONE, label: none }]),
    ...(isGone ? [{ value: chosen, label: "a part that is gone: choose another" }] : []),
    ...stored.map(({ id, document }) => ({ value: id, label: document.name })),
  ];
}
