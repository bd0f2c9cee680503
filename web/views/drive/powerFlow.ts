import type { OperatingPoint } from "../../../shared/model/drive.ts";
import { formatQuantity } from "../../../shared/quantity/format.ts";
import { PERCENT, WATT } from "../bench/shownUnits.ts";

export interface Link {
  readonly name: string;
  readonly share: number;
  readonly text: string;
  readonly means: string;
}

/** Efficiency of each link of the chain from pack to water. */
export function efficiencyChain({ efficiencies }: OperatingPoint): Link[] {
  const link = (name: string, share: number, means: string): Link => ({
    name,
    share,
    text: formatQuantity(share, PERCENT, 3),
    means,
  });
  return [
    link("Pack and leads", efficiencies.supply, "voltage under load over open-circuit voltage"),
    link("Controller", efficiencies.controller, "power to the motor over power in"),
    link("Motor", efficiencies.motor, "shaft power over power in"),
    link("Propeller", efficiencies.propeller, "static merit: ideal over real shaft power"),
  ];
}

export interface Watts {
  readonly name: string;
  readonly power: number;
  readonly share: number;
  readonly text: string;
}

/** Where the power of the pack goes, all thrusters together, the parts adding up to the whole. */
export function whereTheWattsGo(point: OperatingPoint, thrusters: number, hotelPower: number): Watts[] {
  const { losses, shaftPower, efficiencies } = point;
  const ideal = shaftPower * efficiencies.propeller;
  const parts = [
    { name: "Pushing water, the least that this thrust can take", power: thrusters * ideal },
    { name: "Propeller: friction, swirl, tips", power: thrusters * (shaftPower - ideal) },
    { name: "Motor core and friction", power: thrusters * losses.friction },
    { name: "Motor winding", power: thrusters * losses.winding },
    { name: "Controller", power: thrusters * losses.controllerResistance },
    { name: "Pack and leads", power: losses.supplyResistance },
    { name: "Hotel load", power: hotelPower },
  ];
  const total = parts.reduce((sum, { power }) => sum + power, 0);
  return parts
    .filter(({ power }) => power > 0)
    .map(({ name, power }) => ({
      name,
      power,
      share: total > 0 ? power / total : 0,
      text: formatQuantity(power, WATT, 3),
    }));
}
