import { signal } from "@preact/signals";
import { wantedSection } from "../../../app/sections.ts";

/** Id of the card that holds the method pages. */
export const METHODS_CARD = "theory-methods";

/** The method page a person asked for last, until it is shown. */
export const wantedMethod = signal<string | null>(null);

/** Leads to the page of a method: unfolds the card of them and the page in it. */
export function showMethod(id: string): void {
  wantedMethod.value = id;
  wantedSection.value = { id: METHODS_CARD };
}
