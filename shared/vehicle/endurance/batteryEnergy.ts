import { gaussLegendre } from "../../numeric/gaussLegendre.ts";
import type { Battery } from "./battery.ts";

/** Between two points of the curve the voltage is a cubic, which two nodes take exactly. */
const RULE = gaussLegendre(2);

/** Energy of the ideal source between two shares of its charge, J: ∫ U_oc dQ. */
export function idealEnergy({ rated, knots, openCircuitVoltage }: Battery, from: number, to: number): number {
  const ends = [from, ...knots.filter((knot) => knot < from && knot > to), to];
  let energy = 0;
  for (let i = 1; i < ends.length; i++) {
    const [half, middle] = [0.5 * (ends[i - 1]! - ends[i]!), 0.5 * (ends[i - 1]! + ends[i]!)];
    RULE.nodes.forEach((node, k) => {
      energy += rated * half * RULE.weights[k]! * openCircuitVoltage(middle + half * node);
    });
  }
  return energy;
}
