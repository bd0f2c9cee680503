import { expect, test } from "vitest";
import { waterLimits } from "../../shared/drive/waterLimits.ts";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import type { DriveTrainInput } from "../../shared/model/driveTrain.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { relative } from "../relative.ts";
import { TRAIN, trainWith } from "../unit/driveTrains.ts";

const BLADE = { bladeCount: 3, areaRatio: 0.5, pitchRatio: 0.8 };
const limitsOf = (more: Partial<DriveTrainInput>, advanceSpeed = 0, blade: object = BLADE) => {
  const train = trainWith({ propeller: { ...TRAIN.propeller, ...blade }, ...more });
  return waterLimits(train, train.propeller.ahead, advanceSpeed);
};

/**
 * By the printed formulas in Python 3.11: A_P = A_E/A_0 (π/4) D² (1.067 - 0.229 P/D), τ_c = K_T D⁴/(½ A_P (0.7 π D)²),
 * σ = 0.03 + (τ_c/0.28)^(1/0.57) (Molland, Turnock & Hudson after Burrill & Emerson 1963), σ ½ ρ (0.7 π n D)² = p_atm +
 * ρ g h - p_v; h 0.5 m, ρ 999.103 kg/m³ and p_v 1705.7 Pa (15 °C, IAPWS). The last loading needs more than 2, where the
 * chart ends, and is held against that.
 */
test.each([
  [0.5, 75.110606],
  [0.8, 112.069263],
  [0.3, 66.442342],
])("at rest an area ratio of %d cavitates from %d rev/s on", (areaRatio, rate) => {
  expect(limitsOf({ depth: 0.5 }, 0, { ...BLADE, areaRatio }).limits.cavitation).toSatisfy(relative(rate, 1e-4));
});

test("at its rate a propeller stands on the line, at rest and at speed", () => {
  for (const advanceSpeed of [0, 1.5]) {
    const K_T = (J: number) => 0.3 - 0.35 * J;
    const rate = limitsOf({ depth: 5 }, advanceSpeed, { ...BLADE, areaRatio: 1 }).limits.cavitation!;
    const thrust = K_T(advanceSpeed / (rate * 0.07)) * 999.103 * rate ** 2 * 0.07 ** 4;
    const at = { thrust, advanceSpeed, rotationRate: rate, diameter: 0.07, blades: 3, areaRatio: 1, pitchRatio: 0.8 };
    const fluid = { kind: "fresh", temperature: 288.15 };
    const judged = cavitation(CavitationRequest.parse({ ...at, shaftImmersion: 5, fluid }));
    expect(judged.depthFreeOfCavitation).toBeCloseTo(5, 1);
  }
});

test("at rest the rate of air drawn in is where Bernoulli pulls the surface down to the tips", () => {
  // h = D/2 + v²/(2 g), v² = T/(2 ρ A): so n² = 2 g (h - D/2) 2 A/(K_T D⁴).
  const A = (Math.PI / 4) * 0.07 ** 2;
  const n = Math.sqrt((2 * 9.80665 * (0.09 - 0.035) * 2 * A) / (0.3 * 0.07 ** 4));
  expect(limitsOf({ depth: 0.09 }).limits.ventilation).toSatisfy(relative(n, 1e-6));
  expect(limitsOf({ depth: 0.09 }, 1).limits.ventilation).toBeGreaterThan(n);
});

test.each([
  { what: "no depth", more: {}, blade: BLADE, about: "cavitation", says: /depth is not stated/ },
  {
    what: "no pitch",
    more: { depth: 0.5 },
    blade: { areaRatio: 0.5 },
    about: "cavitation",
    says: /pitch ratio.*not stated/,
  },
  { what: "a nozzle", more: { depth: 0.5 }, blade: { ...BLADE, nozzle: true }, about: "cavitation", says: /nozzle/ },
  { what: "deep water", more: { depth: 0.5 }, blade: BLADE, about: "ventilation", says: /7\.1 diameters deep/ },
])("with $what there is no limit of $about, and the reason is told", ({ more, blade, about, says }) => {
  const { limits, grounds } = limitsOf(more, 0, blade);
  expect(limits[about as "cavitation"]).toBeUndefined();
  expect(grounds.find((ground) => ground.about === about)?.text).toMatch(says);
});
