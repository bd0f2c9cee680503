import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";

interface Ranged {
  readonly where: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly isIn: (value: number) => boolean;
  readonly needed: string;
  readonly mend: string;
}

/** Refuses numbers that no vehicle has. Throws InputProblem `vehicle.number-range` with the path of the field. */
export function checkNumbers(vehicle: Vehicle): void {
  const wrong = [...ownNumbers(vehicle), ...vehicle.drives.flatMap(coefficients)].find(
    ({ value, isIn }) => !isIn(value),
  );
  if (wrong === undefined) return;
  const { where, name, value, unit, needed, mend } = wrong;
  throw new InputProblem({
    code: "vehicle.number-range",
    where,
    found: `${name} is ${`${formatNumber(value)} ${unit}`.trim()}`,
    ...{ needed, mend },
  });
}

function ownNumbers({ hotelPower, interaction: { wakeFraction, thrustDeduction } }: Vehicle): Ranged[] {
  const part = { unit: "", isIn: (value: number) => value > -1 && value < 1, needed: "between −1 and 1" };
  return [
    {
      ...{ where: "hotelPower.value", name: "The hotel load", value: hotelPower.value, unit: "W" },
      ...{ isIn: (value) => value >= 0, needed: "0 W or more" },
      mend: "Read current and voltage with the thrusters off",
    },
    {
      ...{ where: "interaction.wakeFraction.value", name: "The wake fraction", value: wakeFraction.value, ...part },
      mend: "Take 0.05 for thrusters that stand clear of the hull",
    },
    {
      ...{ where: "interaction.thrustDeduction.value", name: "The thrust deduction", value: thrustDeduction.value },
      ...{ ...part, mend: "Take 0.05 for thrusters that stand clear of the hull" },
    },
  ];
}

function coefficients({ propeller }: Vehicle["drives"][number], d: number): Ranged[] {
  const sides = (["ahead", "astern"] as const).filter((side) => propeller[side] !== undefined);
  return sides.flatMap((side) =>
    (["thrustCoefficient", "torqueCoefficient"] as const).map((which) => ({
      where: `drives.${d}.propeller.${side}.${which}.value`,
      name: `The ${which === "thrustCoefficient" ? "thrust" : "torque"} coefficient ${side} of “${propeller.name}”`,
      ...{ value: propeller[side]![which].value, unit: "", isIn: (value: number) => value > 0 },
      ...{ needed: "more than 0", mend: "State it without sign, also astern" },
    })),
  );
}
