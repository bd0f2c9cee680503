import { expect, test } from "vitest";
import { BollardEstimateRequest } from "../../shared/model/bollardEstimate.ts";
import { bollardEstimate } from "../../shared/propeller/bollardEstimate.ts";

/**
 * Momentum theory, T = (2 rho A P²)^(1/3) open and (4 sigma rho A P²)^(1/3) in a nozzle (Rankine-Froude; Carlton, Marine
 * Propellers and Propulsion, ch. 8), evaluated in NumPy 1.24.2 outside the project.
 */
const LIMITS = [
  { shaftPower: 100, diameter: 0.07, density: 998.6, open: 42.5176422045, nozzle: 53.5688724053 },
  { shaftPower: 50, diameter: 0.07, density: 1025, open: 27.0184197028, nozzle: 34.0410757184 },
  { shaftPower: 100, diameter: 0.1, density: 998.6, open: 53.9308352257, nozzle: 67.9485945393 },
] as const;

const estimate = (request: object) => bollardEstimate(BollardEstimateRequest.parse(request));

test.each(LIMITS)("$shaftPower W on $diameter m: the limits are those of momentum theory", (limit) => {
  const { open, nozzle, shaftPower, ...disc } = limit;
  const duty = { given: "shaftPower", shaftPower };
  expect(estimate({ ...disc, duty, staticMerit: 1 }).thrust).toBeCloseTo(open, 8);
  expect(estimate({ ...disc, duty, staticMerit: 0.5, nozzleAreaRatio: 1 }).idealThrust).toBeCloseTo(nozzle, 8);
});

/**
 * Static merit of a published propeller: Deters, Ananda & Selig, AIAA 2014-2151, 9 x 6.75 in propeller at 5943 rpm:
 * C_T 0.1404, C_P 0.0801, static figure 0.79788 C_T^1.5/C_P = 0.524.
 */
test("the thrust of a measured propeller follows from its published merit and power", () => {
  const [n, D, density] = [5943 / 60, 0.2286, 1.225];
  const shaftPower = 0.0801 * density * n ** 3 * D ** 5;
  const thrust = 0.1404 * density * n ** 2 * D ** 4;
  const found = estimate({
    duty: { given: "shaftPower", shaftPower },
    diameter: D,
    density,
    staticMerit: 0.524,
  });
  // The published merit has three digits: half a unit in the last is 0.1 %, two thirds of it in thrust.
  expect(Math.abs(found.thrust / thrust - 1)).toBeLessThan(0.001);
});

test("a merit above the ideal is computed and warned of", () => {
  const { warnings } = estimate({
    duty: { given: "thrust", thrust: 10 },
    diameter: 0.07,
    density: 998.6,
    staticMerit: 1.2,
  });
  expect(warnings.map(({ code }) => code)).toEqual(["propeller.merit-above-ideal"]);
});
