import { signal } from "@preact/signals";

/** One section of a long screen. */
export interface Section {
  /** Id of its element in the page. */
  readonly id: string;
  readonly label: string;
}

/** The section a person asked for last; a new object each time, so that asking again leads there again. */
export const wantedSection = signal<{ readonly id: string } | null>(null);
