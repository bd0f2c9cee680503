import { readLog } from "../log/readLog.ts";
import type { BladeGeometryAnswer, BladeGeometryRequest } from "../model/bladeElements.ts";
import { checkedGeometry } from "../propeller/blade/checkedGeometry.ts";
import { geometryWarnings } from "../propeller/blade/geometryWarnings.ts";
import { plainGeometry } from "../propeller/blade/plainGeometry.ts";
import { geometryOfTable } from "./geometryTable.ts";

/**
 * A checked blade geometry from a pasted table or a plain outline, with what to know of it.
 * Throws InputProblem as `geometryOfTable` and `checkedGeometry`; `log.*` where the text is no table.
 */
export function bladeGeometryOf(request: BladeGeometryRequest): BladeGeometryAnswer {
  const geometry = checkedGeometry(
    request.from === "table" ? geometryOfTable(tableOf(request.text), request) : plainGeometry(request),
  );
  return { geometry, warnings: geometryWarnings(geometry) };
}

const tableOf = (text: string) => readLog(new TextEncoder().encode(text), "the table");
