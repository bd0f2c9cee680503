import { computed, signal } from "@preact/signals";
import { trains } from "./driveState.ts";

const chosenName = signal<string | null>(null);

/** The one propeller that tables and draws are made for; the first where none was chosen. */
export const subject = computed(
  () => trains.value.find(({ inHand }) => inHand.name === chosenName.value) ?? trains.value[0],
);

export function chooseSubject(name: string): void {
  chosenName.value = name;
}
