import type { LogTable } from "../log/logTable.ts";
import type { SectionPolar } from "../model/sectionPolar.ts";
import { type ColumnKind, readColumn, requireColumn } from "./tableColumn.ts";

const ANGLE: ColumnKind = {
  text: "the angle of attack",
  header: /^(alpha|α|aoa|angle|angle of attack|incidence)$/i,
  dimension: "angle",
  example: "alpha (deg)",
};
const LIFT: ColumnKind = { text: "the lift coefficient", header: /^c_?l$|lift/i, dimension: "number", example: "C_L" };
const DRAG: ColumnKind = { text: "the drag coefficient", header: /^c_?d$|drag/i, dimension: "number", example: "C_D" };
const REYNOLDS: ColumnKind = {
  text: "the Reynolds number",
  header: /^(re|reynolds.*)$/i,
  dimension: "number",
  example: "Re",
};

/**
 * The polar of a section from a table, one row an angle of attack; rows of one Reynolds number are a block.
 *
 * Throws   InputProblem `sections.*` naming the column or line; `checkedPolar` looks at the polar itself.
 */
export function polarOfTable(table: LogTable): SectionPolar {
  const angle = requireColumn(table, [ANGLE]).values;
  const lift = requireColumn(table, [LIFT]).values;
  const drag = requireColumn(table, [DRAG]).values;
  const reynolds = readColumn(table, REYNOLDS);
  const point = (i: number) => ({ angle: angle[i]!, lift: lift[i]!, drag: drag[i]! });
  const rows = angle.map((_, i) => i);
  if (!reynolds) return { blocks: [{ points: rows.map(point) }] };
  // Blocks in the order of the file: a Reynolds number that comes back later is a fault that `checkedPolar` names.
  const starts = rows.filter((i) => i === 0 || reynolds[i] !== reynolds[i - 1]);
  return {
    blocks: starts.map((start, b) => ({
      reynolds: reynolds[start]!,
      points: rows.slice(start, starts[b + 1]).map(point),
    })),
  };
}
