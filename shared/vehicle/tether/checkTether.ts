import type { TetherRequest } from "../../model/vehicle/tetherShape.ts";
import { formatQuantity } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { METRE } from "./shownUnits.ts";

/**
 * Refuses a request that no tether can answer: sizes that are none, a table of the current that is not in order, a length
 * that does not reach. Throws InputProblem with the path of the field.
 */
export function checkTether(request: TetherRequest): void {
  checkSizes(request);
  checkProfile(request);
  checkReach(request);
}

function checkSizes({ tether, surroundings }: TetherRequest): void {
  const above0 = [
    { where: "tether.diameter", name: "The diameter", value: tether.diameter, unit: "m" },
    { where: "tether.length", name: "The length paid out", value: tether.length, unit: "m" },
    { where: "tether.normalDragCoefficient", name: "The coefficient", value: tether.normalDragCoefficient, unit: "" },
    { where: "surroundings.density", name: "The density", value: surroundings.density, unit: "kg/m³" },
  ];
  const least0 = [
    {
      where: "tether.tangentialDragCoefficient",
      name: "The coefficient",
      value: tether.tangentialDragCoefficient,
      unit: "",
    },
  ];
  const wrong =
    above0.find(({ value }) => !(value > 0 && Number.isFinite(value))) ??
    least0.find(({ value }) => !(value >= 0 && Number.isFinite(value)));
  if (wrong === undefined) return;
  const { where, name, value, unit } = wrong;
  throw new InputProblem({
    code: "vehicle.tether-size",
    where,
    found: `${name} is ${`${Number.isNaN(value) ? "not a number" : value} ${unit}`.trim()}`,
    needed: `${above0.some((row) => row.where === where) ? "greater than" : "at least"} 0${unit && ` ${unit}`}`,
    mend: "",
  });
}

function checkProfile({ surroundings: { current } }: TetherRequest): void {
  if (current.kind === "uniform") return;
  const { profile } = current;
  const row = profile.findIndex(({ depth }, i) => i > 0 && !(depth > profile[i - 1]!.depth));
  if (row < 0) return;
  throw new InputProblem({
    code: "vehicle.tether-profile-order",
    where: `surroundings.current.profile[${row}].depth`,
    found: `A depth of ${metres(profile[row]!.depth)} follows on ${metres(profile[row - 1]!.depth)}`,
    needed: "each depth greater than the one before",
    mend: "Sort the rows from the surface down and leave one row for each depth",
  });
}

function checkReach({ tether, vehicle, given }: TetherRequest): void {
  if (given.what !== "upperEnd") return;
  const { forward, starboard, depth } = given.upperEnd;
  const height = Math.abs(vehicle.depth - depth);
  const distance = Math.hypot(forward, starboard, height);
  if (tether.length > distance) return;
  const isBelowDepth = tether.length <= height;
  const aside = Math.hypot(forward, starboard);
  const place = `${metres(height)} below its upper end${aside > 0 ? ` and ${metres(aside)} away along the surface` : ""}`;
  throw new InputProblem({
    code: "vehicle.tether-too-short",
    where: "tether.length",
    found: isBelowDepth
      ? `A tether of ${metres(tether.length)} does not reach a vehicle ${place}`
      : `A tether of ${metres(tether.length)} does not reach over ${metres(distance)} between its ends`,
    needed: `more than ${metres(distance)}`,
    mend: isBelowDepth ? "Pay out more, or stay shallower" : "Pay out more, or come nearer",
  });
}

const metres = (length: number) => formatQuantity(length, METRE);
