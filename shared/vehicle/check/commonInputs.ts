import type { Vehicle } from "../../model/vehicle/vehicle.ts";

/**
 * Which doubtful inputs two vehicles have in common, by the keys of `DoubtShare.input`: those whose part of both
 * descriptions is the same. What is the same in both is wrong in both by the same amount.
 *
 * Assumes  equal descriptions mean one thing in the world: the same hull, pack, river. Two packs of one kind are not quite.
 */
export function commonInputs(first: Vehicle, second: Vehicle): (input: string) => boolean {
  return (input) => {
    const [one, other] = [part(first, input), part(second, input)];
    return one !== undefined && other !== undefined && JSON.stringify(one) === JSON.stringify(other);
  };
}

/** Part of the description that a doubtful input stands in; undefined: it has none. */
function part(vehicle: Vehicle, input: string): unknown {
  const { drag, water, interaction, supply, hotelPower, mass, netBuoyancy, tether, scenario } = vehicle;
  if (input.startsWith("drag.") || input.startsWith("mass.added.")) return { drag, water };
  if (input.startsWith("thruster.")) return driveOf(vehicle, input);
  if (input.startsWith("supply")) return supply;
  const plain: Readonly<Record<string, unknown>> = {
    ...{ hotelPower, mass, netBuoyancy, tether, payload: scenario.payload },
    ...{ wakeFraction: interaction.wakeFraction, thrustDeduction: interaction.thrustDeduction },
    currentSpeed: { speed: scenario.currentSpeed, doubt: scenario.currentSpeedUncertainty },
  };
  return plain[input];
}

/** "thruster.Stern.ahead" and "thruster.Stern.diameter" are of its propeller, "thruster.Stern.motor" of its motor. */
function driveOf({ drives }: Vehicle, input: string): unknown {
  const [name, of] = [input.slice("thruster.".length, input.lastIndexOf(".")), input.split(".").at(-1)];
  const drive = drives.find((one) => one.name === name);
  if (drive === undefined) return undefined;
  const { motor, propeller, asternEstimate } = drive;
  return of === "motor" ? motor : { propeller, asternEstimate };
}
