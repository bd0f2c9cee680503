import { describe, expect, test } from "vitest";
import { type FitPoint, fitThroughOrigin } from "../../shared/bench/coefficientFit.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "../unit/benchTable.ts";

/**
 * A small log made by formula, and the whole chain worked out apart from this program in python 3 with numpy 2.4.6 and
 * scipy 1.17.1 from the same formula:
 *   tare and plateau means by numpy.mean over the rows named in the recipe; how readings hang together from
 *   numpy.correlate over all plateaus, and over windows and plateaus, at once (pairs above 2/sqrt(N), Geyer 1992), with the
 *   part that the means take up put back (Zięba & Ramza 2011, from memory), and the part of each drawn towards the mean of
 *   all by its variance (Bartlett 1946; DerSimonian & Laird 1986, from memory); rounding step/sqrt(12) where the
 *   deviation is under 0.6 steps;
 *   tare linear between the window middles, also within plateaus and windows;
 *   K_T, C_P: zero of the derivative of Σ (y - b x)²/(u_y² + b² u_x²) by scipy.optimize.brentq;
 *   exponent, intercept: least Σ (y - a - b x)²/(u_y² + b² u_x²) by scipy.optimize.minimize, Nelder-Mead.
 * Density 998.5980363 kg/m³: fresh water of 18 °C by IAPWS SR6-08(2011).
 */
const NUMPY = {
  thrustCoefficient: 0.21475187891389366,
  thrustChiSquared: 0.3211628455587867,
  thrustIndependent: 0.0003101338321245036,
  thrustTare: 0.00011942186709361652,
  thrustCalibration: 0.0021475187891389367,
  thrustDiameter: 0.0011273064509915677,
  powerCoefficient: 0.19595079331325846,
  powerChiSquared: 0.08764374540277242,
  powerIndependent: 0.00017013214970876202,
  powerTare: 0.00047603913387588617,
  staticMerit: 0.4052271114151179,
  exponent: 1.9965281907273766,
  intercept: 0.007830696804303984,
  tares: [1.2868375072801401, 1.3376043486701614],
  thrusts: [2.3434681056340922, 4.533626680315089, 7.889560656065604, 12.772455416129844],
  rates: [18, 25, 33.01988636363637, 42.03693181818182],
};

/** Park & Miller, Communications of the ACM 31 (1988) 1192: exact in doubles, the same in every language. */
function uniformFrom(start: number): () => number {
  let state = start;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}

function formulaLog() {
  const next = uniformFrom(20261125);
  const noise = () => (next() + next() + next() + next() - 2) * Math.sqrt(3);
  const [t, T, Q, n]: number[][] = [[], [], [], []];
  const [K_T, K_Q, D, rho] = [0.215, 0.0312, 0.0762, 998.598];
  [0, 18, 25, 33, 42, 0].forEach((level, step) => {
    for (let k = 0; k < 150; k++) {
      const s = (step * 150 + k) / 25;
      const rate = level * (1 + 0.004 * Math.sin(k / 9));
      const force = K_T * rho * rate ** 2 * D ** 4;
      t!.push(s);
      T!.push(Math.floor((force * 1.02 + 1.3 + 0.002 * s + 0.03 * noise() * (1 + 0.2 * force)) / 0.01 + 0.5) * 0.01);
      Q!.push(K_Q * rho * rate ** 2 * D ** 5 - 0.004 + 0.0001 * s + 0.0004 * noise());
      n!.push(Math.floor(rate / 0.25 + 0.5) * 0.25);
    }
  });
  return tableOf({ t: t!, T: T!, Q: Q!, n: n! }, { resolutions: [null, 0.01, null, 0.25] });
}

const spanOf = ([start, end]: readonly [number, number]) => ({ start, end });

describe("a whole run against numpy and scipy", () => {
  const recipe = recipeOf(
    [
      ["time", "s"],
      ["thrust", "N"],
      ["torque", "N·m"],
      ["rotationRate", "rev/s"],
    ],
    {
      corrections: { thrust: { factor: 1 / 1.02, relativeUncertainty: 0.01 } },
      tare: {
        mode: "windows",
        windows: (
          [
            [1, 5],
            [31, 35],
          ] as const
        ).map(spanOf),
      },
      plateaus: {
        mode: "spans",
        spans: (
          [
            [8, 11.5],
            [14, 17.5],
            [20, 23.5],
            [26, 29.5],
          ] as const
        ).map(spanOf),
      },
    },
  );
  const propeller = propellerOf({ diameter: 0.0762, diameterUncertainty: 1e-4 });
  const run = reduce({ table: formulaLog(), recipe, propeller });
  const part = (fit: "thrustFit" | "powerFit", name: string) =>
    run[fit]!.components.find((component) => component.name.startsWith(name))!.standardUncertainty;
  // The two densities agree to nine digits, the searches of scipy to about eight.
  const close = (value: number, reference: number, relative = 2e-8) =>
    expect(Math.abs(value / reference - 1)).toBeLessThan(relative);

  test("tare windows and plateau means", () => {
    run.tare.windows.forEach(({ thrust }, i) => void close(thrust.value, NUMPY.tares[i]!));
    run.plateaus.forEach(({ thrust, rotationRate }, i) => {
      close(thrust.value, NUMPY.thrusts[i]!);
      close(rotationRate.value, NUMPY.rates[i]!);
    });
    close(run.tare.drift!.value, NUMPY.tares[1]! - NUMPY.tares[0]!);
  });

  test("thrust coefficient, chi-squared and each part of its uncertainty", () => {
    close(run.thrustCoefficient.value, NUMPY.thrustCoefficient);
    close(run.thrustFit.chiSquared, NUMPY.thrustChiSquared, 1e-6);
    close(run.thrustFit.independentUncertainty, NUMPY.thrustIndependent, 1e-6);
    close(part("thrustFit", "zero"), NUMPY.thrustTare, 1e-6);
    close(part("thrustFit", "calibration of the thrust"), NUMPY.thrustCalibration);
    close(part("thrustFit", "diameter"), NUMPY.thrustDiameter);
  });

  test("power coefficient, chi-squared and each part of its uncertainty", () => {
    close(run.powerCoefficient!.value, NUMPY.powerCoefficient);
    close(run.powerFit!.chiSquared, NUMPY.powerChiSquared, 1e-6);
    close(run.powerFit!.independentUncertainty, NUMPY.powerIndependent, 1e-6);
    close(part("powerFit", "zero"), NUMPY.powerTare, 1e-6);
    close(run.staticMerit!.value, NUMPY.staticMerit);
  });

  test("exponent and intercept", () => {
    close(run.exponent!.value, NUMPY.exponent, 1e-7);
    // Nelder-Mead stops some digits earlier.
    expect(Math.abs(run.intercept!.value - NUMPY.intercept)).toBeLessThan(1e-6);
  });

  test("the density part is what one kelvin does by IAPWS-95: 998.5980 at 18 °C, 998.2065 kg/m³ at 20 °C", () => {
    const perKelvin = (998.5980218 - 998.2065435) / 2 / 998.598;
    // The slope itself changes by 5 % over one kelvin.
    close(part("thrustFit", "density"), perKelvin * NUMPY.thrustCoefficient, 0.06);
  });

  test("the whole is the root of the sum of squares of the parts", () => {
    const { independentUncertainty: own, components } = run.thrustFit;
    const squares = components.reduce((sum, { standardUncertainty: u }) => sum + u * u, own * own);
    close(run.thrustCoefficient.standardUncertainty, Math.sqrt(squares), 1e-12);
  });
});

/**
 * Line through the origin with known weights, R 4.2.2 `lm(y ~ 0 + x, weights = 1/u^2)`: slope 0.31491647290271, standard
 * error from the known u 0.002452403789147, chi-squared 0.759385831391. With u(x) = 0.01 x added,
 * `scipy.optimize.minimize_scalar` of Σ (y - b x)²/(u_y² + b² u_x²): slope 0.314912053028, chi-squared 0.580112557782,
 * standard error in York's form 0.002853145464.
 */
describe("a line through the origin with known weights, against R and scipy", () => {
  const x = [0.6, 1.3, 2.4, 3.8, 5.4, 7.3];
  const y = [0.19, 0.405, 0.762, 1.19, 1.713, 2.288];
  const u = [0.01, 0.012, 0.015, 0.02, 0.026, 0.034];
  const points = (part: number): FitPoint[] =>
    x.map((xi, i) => ({
      ...{
        x: xi,
        y: y[i]!,
        scatter: u[i]!,
        scatterDegreesOfFreedom: 50,
        rounding: 0,
        roundingX: part * xi,
        repeatability: 0,
      },
      ...{ tare: null, perTare: 0, tareUncertainty: 0 },
    }));
  // The values are printed to ten digits; York's adjusted x moves the standard error in the fifth.
  const TOLERANCE = 1e-4;

  test.each([
    { part: 0, slope: 0.31491647290271, chiSquared: 0.759385831391, standardError: 0.002452403789147 },
    { part: 0.01, slope: 0.314912053028, chiSquared: 0.580112557782, standardError: 0.002853145464 },
  ])("doubt of x $part", ({ part, slope, chiSquared, standardError }) => {
    const fit = fitThroughOrigin(points(part), false);
    expect(Math.abs(fit.coefficient / slope - 1)).toBeLessThan(1e-9);
    expect(Math.abs(fit.chiSquared / chiSquared - 1)).toBeLessThan(1e-9);
    expect(Math.abs(fit.independent / standardError - 1)).toBeLessThan(TOLERANCE);
    expect(fit.scatterRatio).toBe(1);
    expect(fit.converged).toBe(true);
  });

  test("single readings are never given less than their scatter shows (R, scatter: 0.000955736607812566)", () => {
    const tight = points(0).map((point) => ({ ...point, scatter: point.scatter / 10 }));
    const fit = fitThroughOrigin(tight, true);
    expect(fit.scatterRatio).toBeGreaterThan(3);
    // Above the uniform widening of R, because here the fast points scatter more than their weights say.
    expect(fit.independent).toBeGreaterThan(0.9 * 0.000955736607812566);
    expect(fit.independent).toBeLessThan(2 * 0.000955736607812566);
    expect(fit.degreesOfFreedom).toBe(5);
  });
});
