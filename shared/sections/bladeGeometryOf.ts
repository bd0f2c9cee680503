import { readLog } from "../log/readLog.ts";
import type { BladeGeometryAnswer, BladeGeometryRequest } from "../model/bladeElements.ts";
import { checkedGeometry } from "../propeller/blade/checkedGeometry.ts";
import { geometryWarnings } from "../propeller/blade/geometryWarnings.ts";
import { plainGeometry } from "../propeller/blade/plainGeometry.ts";
import { type BladeFrame, geometryOfTable } from "./geometryTable.ts";

/**
 * A checked blade geometry from a pasted table or a plain outline, with what to know of it.
 * Throws InputProblem as `geometryOfText` and `checkedGeometry`.
 */
export function bladeGeometryOf(request: BladeGeometryRequest): BladeGeometryAnswer {
  const geometry = checkedGeometry(
    request.from === "table" ? geometryOfText(request.text, "the table", request) : plainGeometry(request),
  );
  return { geometry, warnings: geometryWarnings(geometry) };
}

/** As `geometryOfTable`, of delimited text; throws InputProblem `log.*` where the text is no table. */
export function geometryOfText(text: string, name: string, frame: BladeFrame) {
  return geometryOfTable(readLog(new TextEncoder().encode(text), name), frame);
}
