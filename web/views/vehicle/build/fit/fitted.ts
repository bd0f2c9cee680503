import type { DragFit, DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import { fitDrag } from "../../../../../shared/vehicle/drag/fitDrag.ts";
import { sentenceOf } from "../../../../api/apiProblem.ts";

/** What the data come to, or the sentence why nothing. */
export function fittedTo(data: DragFitData): { readonly fit: DragFit | null; readonly problem: string } {
  try {
    return { fit: fitDrag(data), problem: "" };
  } catch (thrown) {
    return { fit: null, problem: sentenceOf(thrown) };
  }
}
