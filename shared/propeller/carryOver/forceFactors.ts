import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { CarryOverFactor, CarryOverRequest } from "../../model/carryOver.ts";
import type { FluidState } from "../../model/fluid.ts";
import { formatNumber } from "../../quantity/format.ts";
import { entry } from "./factor.ts";

/** How well the state of the fluid is taken to be known: standard uncertainties; common practice, no source. */
const STATE_DOUBT = { temperature: 1, pressure: 300, salinity: 1 } as const;

/**
 * Factors on thrust and torque that leave the coefficients alone: T = K_T ρ n² D⁴ and Q = K_Q ρ n² D⁵.
 * A factor of exactly 1 is left out.
 *
 * Source   dynamic similarity at equal coefficients, any text on model tests; densities as `fluidProperties`.
 * Assumes  blades that are exact copies.
 * Error    of the density by the doubt of the stated water or air; size and rotation rate are taken as exact.
 */
export function forceFactors({ measured, target }: CarryOverRequest): CarryOverFactor[] {
  const [rho, rhoBefore] = [fluidProperties(target.fluid).density, fluidProperties(measured.fluid).density];
  const rate = (target.rotationRate / measured.rotationRate) ** 2;
  const size = target.diameter / measured.diameter;
  const density = { factor: rho / rhoBefore, uncertainty: densityDoubt(target.fluid) };
  const exact = (factor: number) => ({ factor, uncertainty: 0 });
  return [
    entry(
      {
        cause: "density",
        actsOn: "forces",
        reason: `${formatNumber(rho, 4)} kg/m³ in place of ${formatNumber(rhoBefore, 4)} kg/m³; the doubt is that of the stated water: ${STATE_DOUBT.temperature} °C, salinity ${STATE_DOUBT.salinity}, ${STATE_DOUBT.pressure / 100} hPa for air (common practice, no source).`,
      },
      density,
      density,
    ),
    entry(
      {
        cause: "rotationRate",
        actsOn: "forces",
        reason: `The square of ${formatNumber(target.rotationRate * 60, 4)} rpm over ${formatNumber(measured.rotationRate * 60, 4)} rpm.`,
      },
      exact(rate),
      exact(rate),
    ),
    entry(
      {
        cause: "diameter",
        actsOn: "forces",
        reason: `The fourth (thrust) and fifth (torque) power of the size ratio ${formatNumber(size, 4)}; the blades are taken as exact copies.`,
      },
      exact(size ** 4),
      exact(size ** 5),
    ),
  ].filter(({ thrust }) => thrust !== 1);
}

/** Relative standard uncertainty of the density, from one-sided differences of the state. */
function densityDoubt(fluid: FluidState): number {
  const { density } = fluidProperties(fluid);
  const change = (other: FluidState) => fluidProperties(other).density / density - 1;
  // Downwards would leave the range of the formulas at their lower ends, upwards at their upper ones.
  const step = fluid.temperature > WARM ? -STATE_DOUBT.temperature : STATE_DOUBT.temperature;
  const ofTemperature = change({ ...fluid, temperature: fluid.temperature + step });
  if (fluid.kind === "fresh") return Math.abs(ofTemperature);
  if (fluid.kind === "air") return Math.hypot(ofTemperature, STATE_DOUBT.pressure / fluid.pressure);
  const salinity = fluid.salinity > STATE_DOUBT.salinity ? -STATE_DOUBT.salinity : STATE_DOUBT.salinity;
  return Math.hypot(ofTemperature, change({ ...fluid, salinity: fluid.salinity + salinity }));
}

/** 20 °C, the middle of all ranges. */
const WARM = 293.15;
