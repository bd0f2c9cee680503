import { fluidProperties } from "../../fluid/fluidProperties.ts";
import { fluidWarnings } from "../../fluid/fluidWarnings.ts";
import type { BurrillVerdict, CavitationRequest, CavitationResult } from "../../model/cavitation.ts";
import { finiteResult } from "../../quantity/finiteResult.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { BURRILL_LINES, type BurrillLine, FORMULA_RANGE } from "./burrill.data.ts";
import { burrillCavitationNumber, burrillLoading, burrillState } from "./burrill.ts";
import { cavitationAnswer } from "./cavitationAnswer.ts";
import {
  cavitationNumber,
  depthOfCavitationNumber,
  pressureOverVapour,
  projectedArea,
  type SectionRunning,
  type Submerged,
  sectionSpeed,
} from "./cavitationNumber.ts";
import { KELLER_ALLOWANCES, kellerAreaRatio } from "./keller.ts";
import { ventilation } from "./ventilation.ts";

/**
 * Whether a propeller cavitates or draws air at its depth, and from which depth it does neither.
 *
 *   σ_0.7 = (p_atm + ρ g h - p_v)/(½ ρ V_R²),   τ_c = T/(½ ρ A_P V_R²),   limit lines τ_c(σ), Keller's least area
 *
 * Source   Burrill & Emerson, Transactions NECIES 79 (1963), and see `burrill.data.ts`, `keller.ts`, `ventilation.ts`.
 * Assumes  the loading stays the same with the depth; even inflow; water with the usual nuclei. The lines come from 16
 *          in. models: small propellers of rough blades can cavitate earlier at single spots.
 * Range    see each; a propeller off the chart is told so, never judged by a line carried on.
 * Throws   InputProblem for a fluid that is not water; OutOfDomain outside the range of a formula.
 */
export function cavitation(request: CavitationRequest): CavitationResult {
  if (request.fluid.kind === "air") throw notWater();
  const { density, vapourPressure } = fluidProperties(request.fluid);
  const at = { ...request, density, vapourPressure };
  const V_R = sectionSpeed(at);
  const sigma = cavitationNumber(at);
  const area = projectedArea(request);
  const loading = request.thrust / (0.5 * density * area * V_R ** 2);
  const lines = BURRILL_LINES.map((line) => verdictOf(line, loading, sigma, at));
  const air = ventilation(at);
  const numbers = {
    ...{ cavitationNumber: sigma, loading, sectionSpeed: V_R, projectedArea: area, lines },
    leastAreas: leastAreas(request, at),
    ventilation: air,
    depthFreeOfCavitation: lines.find(({ line }) => line === "merchant")?.depthNeeded ?? null,
    depthFreeOfVentilation: Math.max(air.depthOfOpenWater, air.depthAgainstDrawdown),
  };
  return finiteResult({
    ...numbers,
    answer: cavitationAnswer(numbers),
    warnings: [...fluidWarnings(request.fluid), ...offTheFormula(sigma), ...drawsAir(numbers.ventilation)],
  });
}

function verdictOf(line: BurrillLine, loading: number, sigma: number, at: SectionRunning & Submerged): BurrillVerdict {
  const needed = burrillCavitationNumber(line, loading);
  return {
    line: line.line,
    meaning: line.meaning,
    state: burrillState(line, loading, sigma),
    limit: burrillLoading(line, sigma),
    cavitationNumberNeeded: needed,
    depthNeeded: needed === null ? null : depthOfCavitationNumber(needed, at),
  };
}

function leastAreas(request: CavitationRequest, at: Submerged): CavitationResult["leastAreas"] {
  const pressure = pressureOverVapour(at);
  return KELLER_ALLOWANCES.map(({ allowance, meaning }) => {
    const areaRatio = kellerAreaRatio({ ...request, pressureOverVapour: pressure, allowance });
    return { allowance, meaning, areaRatio, isMet: request.areaRatio >= areaRatio };
  });
}

function offTheFormula(sigma: number): Warning[] {
  const [low, high] = FORMULA_RANGE;
  if (sigma >= low && sigma <= high) return [];
  return [
    warning({
      code: "propeller.off-burrill-chart",
      where: "shaftImmersion",
      found: `At a cavitation number of ${formatNumber(sigma)} the propeller lies ${sigma < low ? "left" : "right"} of the range the limit lines were written for`,
      needed: `${low} to ${high}; the chart itself ends near 2`,
      mend: sigma < low ? "Expect heavy cavitation" : "It lies on the safe side; how far is not known",
    }),
  ];
}

function drawsAir({ verdict, immersionRatio, depthAgainstDrawdown }: CavitationResult["ventilation"]): Warning[] {
  if (verdict !== "likely") return [];
  return [
    warning({
      code: "propeller.draws-air",
      where: "shaftImmersion",
      found: `With the shaft ${formatNumber(immersionRatio, 2)} diameters deep the propeller can pull the surface down to its tips and draw air`,
      needed: `the shaft at ${formatNumber(depthAgainstDrawdown)} m or deeper`,
      mend: "Go deeper or push less; the thrust of a propeller that draws air falls by half and more (common practice, no source)",
    }),
  ];
}

function notWater(): InputProblem {
  return new InputProblem({
    code: "propeller.cavitation-in-air",
    where: "fluid",
    found: "Air does not cavitate",
    needed: "fresh or sea water",
    mend: "State the water the thruster works in",
  });
}
