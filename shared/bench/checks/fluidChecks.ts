import { freshWaterDensity } from "../../fluid/freshWater.ts";
import { describeFluid } from "../../fluid/parseFluid.ts";
import { seaWaterDensity } from "../../fluid/seaWater.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { ASSUMED_FLUID } from "../assumedFluid.ts";
import type { RunFacts } from "../runFacts.ts";

/** Practical salinity of the open sea; common practice, no source. */
const OPEN_SEA = 35;

const { temperature } = ASSUMED_FLUID;
const SEA_IS_DENSER = seaWaterDensity({ temperature, salinity: OPEN_SEA }) / freshWaterDensity(temperature) - 1;

/**
 * The fluid that was taken because nobody stated it, and what that may cost: K_T and C_P go with 1/ρ, so the static merit,
 * K_T^(3/2)/C_P, with 1/√ρ.
 */
export function fluidChecks({ recipe, fluid }: Pick<RunFacts, "recipe" | "fluid">): Warning[] {
  if (!recipe.fluidAssumed) return [];
  return [
    warning({
      code: "bench.fluid-assumed",
      where: "fluid",
      found: `Nobody stated what the propeller turned in: ${describeFluid(recipe.fluid)} was taken, ${formatNumber(fluid.density, 4)} kg/m³. Where the true density is 1 % greater, K_T and C_P are 1 % smaller and the static merit 0.5 %; sea water is ${formatPercent(SEA_IS_DENSER)} denser than fresh`,
      needed: "the fluid and its temperature on the day of the run",
      mend: "State it with the run",
    }),
  ];
}
