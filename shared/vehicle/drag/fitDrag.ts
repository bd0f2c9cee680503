import type { DragFit, DragFitData } from "../../model/vehicle/dragFit.ts";
import { coastDownFit } from "./coastDownFit.ts";
import { terminalFit } from "./terminalFit.ts";
import { timedRunFit } from "./timedRunFit.ts";
import { towFit } from "./towFit.ts";

/**
 * C_D A (m²) with its doubt from what was measured: tow, coast-down, timed runs or terminal speed. Source, assumptions and
 * what is thrown stand with each method.
 *
 * @example fitDrag({ method: "tow", density: 1000, speed: [1, 2], force: [22.5, 90], model: "quadratic", speedRelativeUncertainty: 0, forceRelativeUncertainty: 0 }).dragArea.value // 0.045 m²
 */
export function fitDrag(data: DragFitData): DragFit {
  switch (data.method) {
    case "tow":
      return towFit(data);
    case "coastDown":
      return coastDownFit(data);
    case "timedRuns":
      return timedRunFit(data);
    case "terminal":
      return terminalFit(data);
  }
}
