import { expect, test } from "vitest";
import { bladeReynolds, discArea, powerCoefficient, thrustCoefficient } from "../../shared/propeller/coefficients.ts";
import {
  idealBollardPower,
  idealBollardThrust,
  idealEfficiency,
  idealNozzleThrust,
  inducedVelocity,
} from "../../shared/propeller/momentum.ts";
import {
  meritFromThrustAndPower,
  staticMerit,
  thrustFromMerit,
  torqueCoefficientFromMerit,
} from "../../shared/propeller/staticMerit.ts";
import { OutOfDomain } from "../../shared/quantity/problem.ts";

const running = { density: 1000, rotationRate: 50, diameter: 0.076 };
const disc = { discArea: 0.004, density: 1000 };

test.each([
  { what: "a density of 0", action: () => thrustCoefficient({ ...running, density: 0, thrust: 1 }) },
  { what: "a rotation rate of 0", action: () => thrustCoefficient({ ...running, rotationRate: 0, thrust: 1 }) },
  { what: "a missing power", action: () => powerCoefficient({ ...running, shaftPower: Number.NaN }) },
  { what: "a diameter below 0", action: () => discArea(-0.1) },
  {
    what: "a viscosity of 0",
    action: () =>
      bladeReynolds({ chord: 0.02, diameter: 0.07, rotationRate: 50, advanceSpeed: 0, kinematicViscosity: 0 }),
  },
  { what: "a shaft power below 0", action: () => idealBollardThrust({ ...disc, shaftPower: -3 }) },
  { what: "an area ratio of 0", action: () => idealNozzleThrust({ ...disc, shaftPower: 3, areaRatio: 0 }) },
  { what: "a thrust of 0 for its power", action: () => idealBollardPower({ ...disc, thrust: 0 }) },
  { what: "a thrust below 0", action: () => inducedVelocity({ ...disc, thrust: -1, advanceSpeed: 1 }) },
  {
    what: "an efficiency of no thrust at no speed",
    action: () => idealEfficiency({ ...disc, thrust: 0, advanceSpeed: 0 }),
  },
  { what: "a merit at no power", action: () => staticMerit({ thrustCoefficient: 0.3, powerCoefficient: 0 }) },
  { what: "a merit from no power", action: () => meritFromThrustAndPower({ ...disc, thrust: 1, shaftPower: 0 }) },
  { what: "a merit of 0", action: () => thrustFromMerit({ ...disc, shaftPower: 1, staticMerit: 0 }) },
  {
    what: "a thrust coefficient below 0",
    action: () => torqueCoefficientFromMerit({ thrustCoefficient: -1, staticMerit: 1 }),
  },
])("$what is refused", ({ action }) => {
  expect(action).toThrow(OutOfDomain);
});

test("the refusal names the quantity, its value, its unit and what would be right", () => {
  expect(() => idealBollardThrust({ ...disc, shaftPower: -3 })).toThrow(
    "shaft power is -3 W. Needed: finite and greater than 0 W.",
  );
});

// The numbers printed in the docstrings, to the digits printed.
test.each([
  {
    name: "thrustCoefficient",
    value: () => thrustCoefficient({ thrust: 51.33, density: 998.6, rotationRate: 84.4765, diameter: 0.07 }),
    printed: 0.3,
    digits: 4,
  },
  {
    name: "idealBollardThrust",
    value: () => idealBollardThrust({ shaftPower: 100, discArea: 0.00785, density: 998.2 }),
    printed: 53.915,
    digits: 3,
  },
  {
    name: "idealNozzleThrust",
    value: () => idealNozzleThrust({ shaftPower: 100, discArea: 0.00384845, density: 998.6 }),
    printed: 53.569,
    digits: 3,
  },
  {
    name: "idealBollardPower",
    value: () => idealBollardPower({ thrust: 10, discArea: 0.0019635, density: 1025 }),
    printed: 15.76,
    digits: 2,
  },
  {
    name: "inducedVelocity",
    value: () => inducedVelocity({ thrust: 20, discArea: 0.00384845, density: 998.6, advanceSpeed: 1 }),
    printed: 1.18881,
    digits: 5,
  },
  {
    name: "idealEfficiency",
    value: () => idealEfficiency({ thrust: 20, discArea: 0.00384845, density: 998.6, advanceSpeed: 1 }),
    printed: 0.45687,
    digits: 5,
  },
  {
    name: "staticMerit",
    value: () => staticMerit({ thrustCoefficient: 0.3, powerCoefficient: 2 * Math.PI * 0.035 }),
    printed: 0.596175,
    digits: 6,
  },
  {
    name: "thrustFromMerit",
    value: () => thrustFromMerit({ shaftPower: 100, discArea: 0.00384845, density: 998.6, staticMerit: 0.6 }),
    printed: 30.246,
    digits: 3,
  },
  {
    name: "torqueCoefficientFromMerit",
    value: () => torqueCoefficientFromMerit({ thrustCoefficient: 0.3, staticMerit: 0.596175371301 }),
    printed: 0.035,
    digits: 4,
  },
])("the example of $name is $printed", ({ value, printed, digits }) => {
  expect(value()).toBeCloseTo(printed, digits);
});
