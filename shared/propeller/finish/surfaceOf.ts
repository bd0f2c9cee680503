import type { NamedSurface, SurfaceState } from "../../model/surfaceState.ts";
import { formatQuantity } from "../../quantity/format.ts";
import { GRAIN_SIZES } from "./grits.data.ts";

const MM = { symbol: "mm", factor: 1e-3 };
const MICROMETRE = { symbol: "µm", factor: 1e-6 };

/** Ridge that a round-edged bead leaves on a wall upright to the layers, over the layer height. Common practice, no source. */
const BEAD_RIDGE = 0.15;
/** Roughness felt by flow along ridges over that of flow across them. Common practice, no source. */
const ALONG_RIDGES = 0.3;
/** Scratch depth over mean grain size of an abrasive that has cut through what was there. Common practice, no source. */
const SCRATCH_DEPTH = 1 / 7;
/** Lift lost for each metre of roughness: 0.2 mm steps cost 11 %. An estimate without source, to be replaced by a fit. */
const LIFT_LOST_PER_ROUGHNESS = 600;

/** Sanding takes ridges off and rounds edges, but leaves hollows. An estimate without source, to be replaced by a fit. */
const SANDED_LIFT = 0.97;

const ESTIMATE = "estimate, no source: let two measured finishes replace it";
const CLEAN = "a clean section, by definition";

/**
 * Roughness and lift factor of a named surface state, each with where it comes from: starting values for what a thrust
 * stand should tell.
 *
 *   printed   k_p = max(h cos α, 0.15 h): height of the step normal to the surface, or of the ridge of a bead
 *   sanded    k_p = d_s50/7
 *
 * Source   step height: Dolenc & Mäkelä, Slicing procedures for layered manufacturing techniques, Computer-Aided Design 26
 *          (1994) 119 (cusp height); grain size: ISO 6344 (`grits.data.ts`); the rest common practice, no source.
 */
export function surfaceOf(state: SurfaceState): NamedSurface {
  switch (state.state) {
    case "printed":
      return printed(state);
    case "sanded":
      return abraded(`sanded to ${state.grit}`, state.grit, SANDED_LIFT, ESTIMATE);
    case "filledAndSanded":
      return abraded(`filled and sanded to ${state.grit}`, state.grit, 1, CLEAN);
    case "coated":
      return plain("coated with epoxy", 5e-6);
    case "machined":
      return plain("machined or moulded", 3e-6);
  }
}

function printed({ layerHeight, flow, slope }: SurfaceState & { state: "printed" }): NamedSurface {
  const step = Math.max(layerHeight * Math.cos(slope), BEAD_RIDGE * layerHeight);
  const along = flow === "alongLayers";
  const roughness = along ? ALONG_RIDGES * step : step;
  const basis = `step of a layer of ${formatQuantity(layerHeight, MM, 2)} seen along the slope of the surface (cusp height, Dolenc & Mäkelä 1994)`;
  return {
    name: `as printed in layers of ${formatQuantity(layerHeight, MM, 2)}, flow ${along ? "along" : "across"} them`,
    surface: { roughness, liftFactor: keptLift(roughness), dragFactor: 1 },
    roughnessBasis: along
      ? `${basis}; ${100 * ALONG_RIDGES} % of it for flow along ridges (common practice, no source)`
      : basis,
    liftFactorBasis: ESTIMATE,
  };
}

const scratch = (grit: keyof typeof GRAIN_SIZES) => SCRATCH_DEPTH * GRAIN_SIZES[grit];
const keptLift = (roughness: number) => Math.exp(-LIFT_LOST_PER_ROUGHNESS * roughness);

function abraded(
  name: string,
  grit: keyof typeof GRAIN_SIZES,
  liftFactor: number,
  liftFactorBasis: string,
): NamedSurface {
  return {
    name,
    surface: { roughness: scratch(grit), liftFactor, dragFactor: 1 },
    roughnessBasis: `a seventh of the mean grain of ${formatQuantity(GRAIN_SIZES[grit], MICROMETRE)} (ISO 6344; depth of a scratch: common practice, no source)`,
    liftFactorBasis,
  };
}

function plain(name: string, roughness: number): NamedSurface {
  return {
    name,
    surface: { roughness, liftFactor: 1, dragFactor: 1 },
    roughnessBasis: "common practice, no source",
    liftFactorBasis: CLEAN,
  };
}
