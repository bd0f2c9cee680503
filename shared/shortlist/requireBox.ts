import { CRITERIA, type PartsBox, type ShortlistRequirement } from "../model/shortlist.ts";
import { InputProblem } from "../quantity/problem.ts";
import { allSupplies } from "./boxContents.ts";
import { combinationCount, type Sizes } from "./combinations.ts";
import { countInWords } from "./words.ts";

/** Combinations that are searched at most: some minutes of one thread. */
const MOST_COMBINATIONS = 50_000_000;

/**
 * Refuses a box that makes no combination, and a requirement that can not rank or contradicts itself.
 *
 * Throws   InputProblem `shortlist.empty-box`, `shortlist.no-weight` or `shortlist.voltage-range`.
 */
export function requireBox(requirement: ShortlistRequirement, box: PartsBox): void {
  const kinds = [
    ["motors", "motor", box.motors.length],
    ["controllers", "controller", box.controllers.length + (box.withoutController ? 1 : 0)],
    ["supplies", "pack or supply", allSupplies(box).length],
    ["propellers", "propeller", box.propellers.length + box.series.length],
    ["gears", "gear, and direct drive is ruled out", box.gears.length + (box.directDrive ? 1 : 0)],
  ] as const;
  const missing = kinds.filter(([, , count]) => count === 0);
  if (missing.length > 0) throw emptyBox(missing);
  if (CRITERIA.every((criterion) => requirement.weights[criterion] === 0)) throw noWeight();
  const { least = 0, greatest = Infinity } = requirement.supplyVoltage ?? {};
  if (least > greatest) throw voltageRange(least, greatest);
}

/** Throws InputProblem `shortlist.too-many`. */
export function requireSize(sizes: Sizes): void {
  const count = combinationCount(sizes);
  if (count <= MOST_COMBINATIONS) return;
  throw new InputProblem({
    code: "shortlist.too-many",
    where: "box",
    found: `The box makes ${countInWords(count)} combinations`,
    needed: `at most ${countInWords(MOST_COMBINATIONS)}`,
    mend: "Leave out parts that are not in question, or diameters and pitches in between",
  });
}

function emptyBox(missing: readonly (readonly [string, string, number])[]): InputProblem {
  return new InputProblem({
    code: "shortlist.empty-box",
    where: missing.map(([place]) => `box.${place}`).join(", "),
    found: `There is no combination to try: the box holds no ${missing.map(([, words]) => words).join(", no ")}`,
    needed: "at least one motor, controller, supply and propeller",
    mend: "Add parts to the box; a propeller can be one of a published series, and withoutController stands for a controller still to be chosen",
  });
}

function noWeight(): InputProblem {
  return new InputProblem({
    code: "shortlist.no-weight",
    where: "requirement.weights",
    found: "All weights are 0, so that nothing tells a better combination from a worse one",
    needed: `a weight above 0 for one of ${CRITERIA.join(", ")}`,
    mend: "Give what matters most a weight of 1",
  });
}

function voltageRange(least: number, greatest: number): InputProblem {
  return new InputProblem({
    code: "shortlist.voltage-range",
    where: "requirement.supplyVoltage",
    found: `The least voltage is ${least} V and the greatest ${greatest} V`,
    needed: "a least voltage that is not above the greatest",
    mend: "Change one of the two",
  });
}
