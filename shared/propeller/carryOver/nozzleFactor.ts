import type { CarryOverFactor, CarryOverRequest } from "../../model/carryOver.ts";
import { idealBollardThrust, idealNozzleThrust } from "../momentum.ts";
import { between, entry } from "./factor.ts";

/** Doubt of the torque when a nozzle comes or goes, of the torque; common practice, no source. */
const TORQUE_DOUBT = 0.1;

/**
 * A nozzle added or taken away, at equal power: between no gain (a wide gap at the tips) and that of momentum theory at
 * rest for a nozzle that ends as wide as the disc, 2^(1/3) = 1.26; null where nothing changes.
 *
 * Source   Küchemann & Weber, Aerodynamics of Propulsion (1953).
 */
export function nozzleFactor({ measured, target }: CarryOverRequest): CarryOverFactor | null {
  if (measured.nozzle === target.nozzle) return null;
  const disc = { shaftPower: 1, discArea: 1, density: 1 };
  const gain = idealNozzleThrust(disc) / idealBollardThrust(disc);
  return entry(
    {
      cause: "nozzle",
      actsOn: "coefficients",
      reason: `The propeller was measured ${measured.nozzle ? "in" : "without"} a nozzle and is to work ${target.nozzle ? "in" : "without"} one: between no change and the ideal ${target.nozzle ? "gain" : "loss"} at equal power. Measure it as it will work.`,
    },
    between(1, target.nozzle ? gain : 1 / gain),
    { factor: 1, uncertainty: TORQUE_DOUBT },
  );
}
