import type { SeriesPropeller } from "../../../../shared/model/seriesPropeller.ts";

/** The published series in the words of the forms. */
export const FAMILY_NAMES: Readonly<Record<SeriesPropeller["family"], string>> = {
  "wageningen-b": "Wageningen B, open",
  "ka-4-70-19a": "Ka 4-70 in nozzle 19A",
  "ka-5-75-19a": "Ka 5-75 in nozzle 19A",
};
