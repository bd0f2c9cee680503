import type { BladeElement } from "../../model/bladeElements.ts";

/** Part of the blade that may work beyond what is known without a word: a twisted root or tip often does. */
export const UNREMARKABLE = 0.1;

/** Part of the length of the blade whose pieces are of a kind. */
export function shareOf(elements: readonly BladeElement[], isOfKind: (element: BladeElement) => boolean): number {
  const lengthOf = (those: readonly BladeElement[]) => those.reduce((sum, { width }) => sum + width, 0);
  return lengthOf(elements.filter(isOfKind)) / lengthOf(elements);
}
