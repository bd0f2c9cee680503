import { expect, test } from "vitest";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { relativeError } from "../relative.ts";

/**
 * Found apart from the project: Python 3.11, scipy 1.17.1. For each pitch ratio `scipy.optimize.brentq` solves the duty
 * of the published polynomials (Oosterveld & van Oossanen 1975, table 5) for rotation rate or diameter;
 * `scipy.optimize.minimize_scalar` (bounded, xatol 1e-10) walks the pitch ratio from 0.5 to 1.4. Density 1000 kg/m³.
 */
const FOUND = [
  {
    series: { blades: 4, areaRatio: 0.7 },
    duty: { given: "thrust", thrust: 30 },
    fixed: { given: "diameter", diameter: 0.1 },
    advanceSpeed: 1.5,
    best: { pitchRatio: 0.8067962940314337, rotationRate: 37.34323895561503, shaftPower: 94.86472924523598 },
  },
  {
    series: { blades: 3, areaRatio: 0.5 },
    duty: { given: "shaftPower", shaftPower: 60 },
    fixed: { given: "diameter", diameter: 0.076 },
    advanceSpeed: 1.5,
    best: { pitchRatio: 0.7157432965603137, rotationRate: 56.290040626754276, thrust: 18.67354706857473 },
  },
  {
    series: { blades: 3, areaRatio: 0.5 },
    duty: { given: "shaftPower", shaftPower: 60 },
    fixed: { given: "rotationRate", rotationRate: 40 },
    advanceSpeed: 1.5,
    best: { pitchRatio: 0.6367058425866174, diameter: 0.09956466269818037, thrust: 20.840008979404995 },
  },
  {
    series: { blades: 5, areaRatio: 0.75 },
    duty: { given: "thrust", thrust: 40 },
    fixed: { given: "rotationRate", rotationRate: 30 },
    advanceSpeed: 2,
    best: { pitchRatio: 0.8221490953480234, diameter: 0.1258926324619756, shaftPower: 138.12003573644645 },
  },
  {
    series: { blades: 3, areaRatio: 0.5 },
    duty: { given: "thrust", thrust: 25 },
    fixed: { given: "diameter", diameter: 0.076 },
    advanceSpeed: 0,
    best: { pitchRatio: 0.5460199116683753, rotationRate: 59.78238308870099, shaftPower: 65.57398470439479 },
  },
  {
    series: { blades: 3, areaRatio: 0.5 },
    duty: { given: "shaftPower", shaftPower: 60 },
    fixed: { given: "both", diameter: 0.076, rotationRate: 40 },
    advanceSpeed: 1.5,
    best: { pitchRatio: 1.1865998744949624, shaftPower: 60 },
  },
];

test.each(FOUND)("$duty at $advanceSpeed m/s with $fixed asks for a pitch ratio of $best.pitchRatio", (row) => {
  const { best, ...request } = row;
  const series = { family: "wageningen-b", ...row.series };
  const result = bestPitch(BestPitchRequest.parse({ ...request, series, density: 1000 }));
  if (result.state === "failed") throw new Error(result.reason);
  // The place of a minimum is known to the root of the rounding unit only; what is minimal there much better.
  const tolerances: Readonly<Record<string, number>> = { pitchRatio: 1e-5, rotationRate: 1e-5, diameter: 1e-5 };
  for (const [name, value] of Object.entries(best)) {
    const found = result.best[name as keyof typeof best];
    expect(relativeError(found, value), name).toBeLessThan(tolerances[name] ?? 1e-8);
  }
});
