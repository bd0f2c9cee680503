import type { FluidState } from "../shared/model/fluid.ts";
import type { ShortlistRequirementInput } from "../shared/model/shortlist.ts";

/** What the co-op asks of a level thruster when the shortlist is opened. Invented like the rest. */
export const demoRequirement = (water: FluidState): ShortlistRequirementInput => ({
  ...{ name: "Level thrusters of the Dabchick", position: "horizontal", thrusters: 2, hotelPower: 10 },
  ...{ thrustAhead: 15, thrustAstern: 6, diameter: 0.08, water },
});
