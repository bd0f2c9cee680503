import type { FluidProperties, FluidState } from "../model/fluid.ts";
import { airDensity, airVapourPressure, airViscosity } from "./air.ts";
import { freshWaterDensity, freshWaterViscosity, saturationPressure } from "./freshWater.ts";
import { seaWaterDensity, seaWaterVapourPressure, seaWaterViscosity } from "./seaWater.ts";

/**
 * Density (kg/m³), dynamic (Pa·s) and kinematic (m²/s) viscosity and vapour pressure (Pa) of a fluid at the surface.
 * The vapour pressure of water is where it boils; that of air is the partial pressure of the water in it.
 *
 * Source, range and error stand with each fluid: `freshWater.ts`, `seaWater.ts`, `air.ts`.
 * A state that is computed but lies outside what its formula was made for is named by `fluidWarnings`.
 * Throws   OutOfDomain outside the range of the fluid.
 *
 * @example fluidProperties({ kind: "fresh", temperature: 291.15 }).density // 998.598 kg/m³
 */
export function fluidProperties(state: FluidState): FluidProperties {
  switch (state.kind) {
    case "fresh":
      return properties(
        freshWaterDensity(state.temperature),
        freshWaterViscosity(state.temperature),
        saturationPressure(state.temperature),
      );
    case "sea":
      return properties(seaWaterDensity(state), seaWaterViscosity(state), seaWaterVapourPressure(state));
    case "air":
      return properties(airDensity(state), airViscosity(state.temperature), airVapourPressure(state));
  }
}

function properties(density: number, dynamicViscosity: number, vapourPressure: number): FluidProperties {
  return { density, dynamicViscosity, kinematicViscosity: dynamicViscosity / density, vapourPressure };
}
