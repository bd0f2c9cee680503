import type { PrintedMaterial } from "../../model/bladeStrength.ts";

const COMMON = {
  layerAngle: 0,
  temperatureFactor: 1,
  fatigueFactor: 0.3,
  source: "common practice, no source",
} as const;

/**
 * Where a builder may start from: middling values of printed test bars, every one common practice, no source. Prints differ
 * by a third and more with temperature, orientation and filling; the maker's data sheet or an own pull test comes first.
 * Solid prints; the water factor is for long soaking in cold water.
 */
export const PRINTED_MATERIALS: readonly PrintedMaterial[] = [
  {
    ...COMMON,
    name: "polylactide, filament",
    density: 1240,
    strengthInLayer: 45e6,
    strengthAcrossLayers: 25e6,
    modulusInLayer: 3e9,
    modulusAcrossLayers: 2.5e9,
    waterFactor: 0.85,
  },
  {
    ...COMMON,
    name: "glycol-modified polyester, filament",
    density: 1270,
    strengthInLayer: 40e6,
    strengthAcrossLayers: 22e6,
    modulusInLayer: 1.9e9,
    modulusAcrossLayers: 1.6e9,
    waterFactor: 0.95,
  },
  {
    ...COMMON,
    name: "styrene plastic (ABS or ASA), filament",
    density: 1050,
    strengthInLayer: 33e6,
    strengthAcrossLayers: 17e6,
    modulusInLayer: 2e9,
    modulusAcrossLayers: 1.7e9,
    waterFactor: 0.95,
  },
  {
    ...COMMON,
    name: "nylon 12, sintered powder",
    density: 950,
    strengthInLayer: 45e6,
    strengthAcrossLayers: 40e6,
    modulusInLayer: 1.6e9,
    modulusAcrossLayers: 1.5e9,
    waterFactor: 0.9,
  },
  {
    ...COMMON,
    name: "nylon with chopped carbon fibre, filament",
    density: 1150,
    strengthInLayer: 60e6,
    strengthAcrossLayers: 25e6,
    modulusInLayer: 5e9,
    modulusAcrossLayers: 2e9,
    waterFactor: 0.6,
  },
  {
    ...COMMON,
    name: "tough photopolymer resin",
    density: 1180,
    strengthInLayer: 45e6,
    strengthAcrossLayers: 42e6,
    modulusInLayer: 2e9,
    modulusAcrossLayers: 2e9,
    waterFactor: 0.8,
  },
];
