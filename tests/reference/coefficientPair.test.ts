import { describe, expect, test } from "vitest";
import { coefficientPair, pairFromMerit } from "../../shared/drive/coefficientPair.ts";
import type { CoefficientFit } from "../../shared/model/reduction.ts";
import { staticMerit } from "../../shared/propeller/staticMerit.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";

/** A fit of coefficient `value` from relative parts by key; what is not named under a key is its own. */
function fitOf(value: number, own: number, parts: Record<string, number>, degreesOfFreedom = 1e9): CoefficientFit {
  const common = Math.hypot(...Object.values(parts));
  const whole = value * Math.hypot(own, common);
  return {
    coefficient: uncertain(value, whole, degreesOfFreedom),
    independentUncertainty: own * value,
    commonUncertainty: common * value,
    components: Object.entries(parts).map(([key, part]) => ({ name: key, key, standardUncertainty: part * value })),
    ...{ degreesOfFreedom, points: 5, chiSquared: 3, scatterRatio: 1 },
  };
}

/** Thrust to 1 %, torque to 1.2 %, density to 1 %, rotation rate to 0.3 % and diameter to 0.5 %. */
const RUN = {
  thrustFit: fitOf(0.3, 0.01, { density: 0.01, "rotationRate-calibration": 0.006, "diameter:p": 0.02 }),
  powerFit: fitOf(0.22, 0.012, { density: 0.01, "rotationRate-calibration": 0.006, "diameter:p": 0.025 }),
};
const pairOf = (isSameCopy: boolean, runs = [RUN]) =>
  coefficientPair({
    thrustCoefficient: runs[0]!.thrustFit.coefficient,
    torqueCoefficient: uncertain(
      0.035,
      0.035 * (runs[0]!.powerFit.coefficient.standardUncertainty / 0.22),
      runs[0]!.powerFit.degreesOfFreedom,
    ),
    ...{ runs, isSameCopy },
  });

describe("correlation of thrust and torque coefficient", () => {
  test("that of a run is what four million draws of its readings show", () => {
    // numpy 2.4.6, default_rng(20261129), 4e6 draws each of ρ, n, D, T, Q around 1: K_T = T/(ρ n² D⁴), K_Q = Q/(ρ n² D⁵);
    // corrcoef of their logarithms 0.83814, standard deviations 0.025233 and 0.030099.
    const { thrustCoefficient, torqueCoefficient, correlation } = pairOf(false);
    expect(correlation).toBeCloseTo(0.83814, 3);
    expect(thrustCoefficient.standardUncertainty / 0.3).toBeCloseTo(0.025233, 4);
    expect(torqueCoefficient.standardUncertainty / 0.035).toBeCloseTo(0.030099, 4);
  });

  test("of the very propeller that was measured the diameter drops out, with its share of the correlation", () => {
    // The same draws of K_T D⁴ and K_Q D⁵: 0.52901, 0.015372 and 0.016737.
    const { thrustCoefficient, torqueCoefficient, correlation } = pairOf(true);
    expect(correlation).toBeCloseTo(0.52901, 3);
    expect(thrustCoefficient.standardUncertainty / 0.3).toBeCloseTo(0.015372, 4);
    expect(torqueCoefficient.standardUncertainty / 0.035).toBeCloseTo(0.016737, 4);
  });

  test("runs that share no cause have none", () => {
    const apart = { thrustFit: fitOf(0.3, 0.01, { a: 0.01 }), powerFit: fitOf(0.22, 0.01, { b: 0.01 }) };
    expect(pairOf(false, [apart]).correlation).toBe(0);
  });

  test("causes that each of two mountings has of its own count half in the mean", () => {
    // e = 0.02/2 for each of two keys: covariance 2 x 0.01² against 0.0223607² for the whole.
    const run = (key: string) => ({
      thrustFit: fitOf(0.3, 0.01, { [key]: 0.02 }),
      powerFit: fitOf(0.22, 0.01, { [key]: 0.02 }),
    });
    expect(pairOf(false, [run("one"), run("two")]).correlation).toBeCloseTo(2e-4 / 5e-4, 12);
  });

  test("few degrees of freedom keep their wide interval", () => {
    // Student's 97.5 % point for 3 degrees of freedom over the normal one: 3.182446/1.959964 (R 4.2.2 qt, qnorm).
    const few = { thrustFit: fitOf(0.3, 0.01, {}, 3), powerFit: fitOf(0.22, 0.01, {}, 3) };
    expect(pairOf(false, [few]).thrustCoefficient.standardUncertainty / 0.003).toBeCloseTo(3.182446 / 1.959964, 5);
  });
});

test("a merit worked out from the pair is as doubtful as the bench says the run's is", () => {
  // u²(FM)/FM² = (1.5 u_T)² + u_Q² - 3 r u_T u_Q; the bench adds the signed parts of one run.
  const rates = [0, 18, 25, 33, 42, 0];
  const columns: Record<string, number[]> = { t: [], T: [], Q: [], n: [] };
  rates.forEach((rate, step) => {
    for (let k = 0; k < 120; k++) {
      const wave = 0.001 * Math.sin(k * 1.7 + step);
      columns["t"]!.push((step * 120 + k) / 25);
      columns["T"]!.push(0.215 * 998.6 * rate ** 2 * 0.076 ** 4 * (1 + wave));
      columns["Q"]!.push(0.031 * 998.6 * rate ** 2 * 0.076 ** 5 * (1 + 0.001 * Math.cos(k * 2.3)));
      columns["n"]!.push(rate);
    }
  });
  const recipe = recipeOf([
    ["time", "s"],
    ["thrust", "N"],
    ["torque", "N·m"],
    ["rotationRate", "rev/s"],
  ]);
  const run = reduce({ table: tableOf(columns), recipe, propeller: propellerOf({ diameterUncertainty: 0.0004 }) });
  const pair = coefficientPair({
    ...{ thrustCoefficient: run.thrustCoefficient, torqueCoefficient: run.torqueCoefficient! },
    ...{ runs: [run], isSameCopy: false },
  });
  const [u_T, u_Q] = [run.thrustCoefficient, run.torqueCoefficient!].map(
    ({ value, standardUncertainty }) => standardUncertainty / value,
  );
  const ofMerit = Math.sqrt((1.5 * u_T!) ** 2 + u_Q! ** 2 - 3 * pair.correlation * u_T! * u_Q!);
  expect(pair.correlation).toBeGreaterThan(0.9);
  expect(ofMerit).toBeCloseTo(run.staticMerit!.standardUncertainty / run.staticMerit!.value, 8);
});

test("a torque from a stated merit hangs wholly on the thrust where the merit is exact", () => {
  const pair = pairFromMerit(
    { value: 0.3, standardUncertainty: 0.006 },
    { value: 0.596175371301, standardUncertainty: 0 },
  );
  expect(pair.torqueCoefficient.value).toBeCloseTo(0.035, 11);
  expect(pair.correlation).toBe(1);
  expect(pair.torqueCoefficient.standardUncertainty / 0.035).toBeCloseTo(0.03, 9);
  const doubtful = pairFromMerit(
    { value: 0.3, standardUncertainty: 0.006 },
    { value: 0.6, standardUncertainty: 0.024 },
  );
  // 3 % by the thrust and 4 % by the merit: 5 %, r = 3/5.
  expect(doubtful.correlation).toBeCloseTo(0.6, 12);
  expect(
    staticMerit({ thrustCoefficient: 0.3, powerCoefficient: 2 * Math.PI * doubtful.torqueCoefficient.value }),
  ).toBeCloseTo(0.6, 12);
});
