import type { SectionPolar } from "../../model/sectionPolar.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem, type Problem } from "../../quantity/problem.ts";
import { reynoldsWords } from "../reynoldsWords.ts";

type Points = SectionPolar["blocks"][number]["points"];

const degrees = (angle: number) => `${formatNumber((angle * 180) / Math.PI, 4)}°`;

/**
 * `polar`, if a section can have it.
 * Throws InputProblem naming block and row: `propeller.polar-reynolds`, `propeller.polar-order`, `propeller.polar-drag` or
 * `propeller.polar-span`.
 */
export function checkedPolar(polar: SectionPolar): SectionPolar {
  polar.blocks.forEach(({ reynolds, points }, i) => {
    const before = polar.blocks[i - 1]?.reynolds;
    const fault =
      reynoldsFault(polar.blocks.length, reynolds, before) ??
      orderFault(points) ??
      dragFault(points) ??
      spanFault(points);
    if (!fault) return;
    throw new InputProblem({ ...fault, where: `blocks[${i}]${fault.where}` });
  });
  return polar;
}

function reynoldsFault(count: number, reynolds: number | undefined, before = 0): Problem | undefined {
  if (count === 1 || (reynolds !== undefined && reynolds > before)) return undefined;
  return {
    code: "propeller.polar-reynolds",
    where: ".reynolds",
    found:
      reynolds === undefined
        ? "The block has no Reynolds number"
        : `Its Reynolds number ${reynoldsWords(reynolds)} does not rise`,
    needed: "a Reynolds number for each block, rising",
    mend: "Order the blocks by Reynolds number and leave no two alike",
  };
}

function orderFault(points: Points): Problem | undefined {
  const row = points.findIndex(({ angle }, i) => i > 0 && angle <= points[i - 1]!.angle);
  const far = points.findIndex(({ angle }) => Math.abs(angle) > Math.PI);
  if (row < 0 && far < 0) return undefined;
  const wrong = row < 0 ? far : row;
  return {
    code: "propeller.polar-order",
    where: `.points[${wrong}].angle`,
    found:
      row < 0
        ? `In row ${far + 1} the angle of attack is ${formatNumber(points[far]!.angle, 4)} rad`
        : `In row ${row + 1} ${degrees(points[row]!.angle)} follows ${degrees(points[row - 1]!.angle)}`,
    needed: "angles that rise from row to row, between -180° and 180°",
    mend: row < 0 ? "Degrees may have been sent as radians" : "Sort the rows; of two rows with one angle keep one",
  };
}

function dragFault(points: Points): Problem | undefined {
  const row = points.findIndex(({ drag }) => drag <= 0);
  if (row < 0) return undefined;
  return {
    code: "propeller.polar-drag",
    where: `.points[${row}].drag`,
    found: `In row ${row + 1} the drag coefficient at ${degrees(points[row]!.angle)} is ${formatNumber(points[row]!.drag)}`,
    needed: "more than 0",
    mend: "Lift and drag may be exchanged; a section does not push itself forward",
  };
}

function spanFault(points: Points): Problem | undefined {
  const [first, last] = [points[0]!.angle, points.at(-1)!.angle];
  if (first < 0 && last > 0 && last < Math.PI && first > -Math.PI) return undefined;
  if (first === -Math.PI && last === Math.PI) return undefined;
  return {
    code: "propeller.polar-span",
    where: ".points",
    found: `The polar runs from ${degrees(first)} to ${degrees(last)}`,
    needed: "angles of attack from below 0° to above, best from stall to stall",
    mend: "Add rows; beyond the ends the section is taken as stalled",
  };
}
