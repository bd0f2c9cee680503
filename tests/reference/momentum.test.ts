import { describe, expect, test } from "vitest";
import {
  bladeReynolds,
  discArea,
  powerCoefficient,
  TORQUE_OVER_POWER_COEFFICIENT,
  thrustCoefficient,
} from "../../shared/propeller/coefficients.ts";
import {
  idealBollardPower,
  idealBollardThrust,
  idealEfficiency,
  idealNozzleThrust,
  idealThrust,
  inducedVelocity,
} from "../../shared/propeller/momentum.ts";
import {
  meritFromThrustAndPower,
  staticMerit,
  thrustFromMerit,
  torqueCoefficientFromMerit,
} from "../../shared/propeller/staticMerit.ts";
import { relativeError } from "../relative.ts";

// Rankine-Froude theory (Carlton, Marine Propellers and Propulsion, ch. 8), evaluated independently in Python.
test.each([
  { shaftPower: 100, diameter: 0.07, density: 998.6, open: 42.5176422045, nozzle: 53.5688724053 },
  { shaftPower: 50, diameter: 0.07, density: 1025, open: 27.0184197028, nozzle: 34.0410757184 },
  { shaftPower: 100, diameter: 0.1, density: 998.6, open: 53.9308352257, nozzle: 67.9485945393 },
])("$shaftPower W on a disc of $diameter m pushes at most $open N, $nozzle N with a nozzle", (row) => {
  const disc = { shaftPower: row.shaftPower, density: row.density, discArea: discArea(row.diameter) };
  expect(relativeError(idealBollardThrust(disc), row.open)).toBeLessThan(1e-11);
  expect(relativeError(idealNozzleThrust(disc), row.nozzle)).toBeLessThan(1e-11);
});

test.each([
  { advanceSpeed: 1, thrust: 20, v: 1.1888134823, efficiency: 0.456868530876 },
  { advanceSpeed: 2, thrust: 30, v: 1.2143027044, efficiency: 0.622218933286 },
  { advanceSpeed: 0, thrust: 20, v: 1.6130998041, efficiency: 0 },
])("a disc of 70 mm with $thrust N at $advanceSpeed m/s speeds the water up by $v m/s", (row) => {
  const disc = { thrust: row.thrust, advanceSpeed: row.advanceSpeed, density: 998.6, discArea: discArea(0.07) };
  expect(relativeError(inducedVelocity(disc), row.v)).toBeLessThan(1e-10);
  expect(idealEfficiency(disc)).toBeCloseTo(row.efficiency, 11);
});

// Ideal efficiency against thrust loading, 2/(1 + sqrt(1 + C_Th)); C_Th of 3 and 8 are exact: 2/3 and 1/2.
describe("ideal efficiency of an open disc", () => {
  test.each([
    [0.1, 0.9762],
    [0.25, 0.9443],
    [0.5, 0.899],
    [1, 0.8284],
    [2, 0.7321],
    [3, 2 / 3],
    [5, 0.5798],
    [8, 0.5],
    [10, 0.4633],
    [20, 0.3583],
    [50, 0.2457],
  ])("at a thrust loading of %d is %d", (loading, efficiency) => {
    const disc = { thrust: 0.5 * 1000 * 0.01 * 2 ** 2 * loading, density: 1000, discArea: 0.01, advanceSpeed: 2 };
    expect(Math.abs(idealEfficiency(disc) - efficiency)).toBeLessThan(5.1e-5);
  });
});

// In a nozzle the disc carries the part τ of the thrust: 2/(1 + sqrt(1 + τ C_Th)), Küchemann & Weber 1953; van Manen &
// Oosterveld 1966. Worked out in Python 3.11 and rounded.
test.each([
  { loading: 0.5, share: 0.7, efficiency: 0.9251 },
  { loading: 1, share: 0.7, efficiency: 0.8681 },
  { loading: 1, share: 0.5, efficiency: 0.899 },
  { loading: 8, share: 0.5, efficiency: 0.618 },
  { loading: 50, share: 0.7, efficiency: 0.2857 },
])("ideal efficiency at a loading of $loading with $share of it on the disc is $efficiency", (row) => {
  const thrust = row.share * 0.5 * 1000 * 0.01 * 2 ** 2 * row.loading;
  const disc = { thrust, density: 1000, discArea: 0.01, advanceSpeed: 2 };
  expect(Math.abs(idealEfficiency(disc) - row.efficiency)).toBeLessThan(5.1e-5);
});

// Momentum theory solved apart from the project for u of P = m u (V + u/2): Python 3.11, `scipy.optimize.brentq` (scipy
// 1.17.1, xtol 1e-15); m = ρ A (V + u/2) open, ρ σ A (V + u) in a nozzle. 100 W, 0.00384845 m², 998.6 kg/m³.
test.each([
  { advanceSpeed: 0, nozzleAreaRatio: null, thrust: 42.5176385194091 },
  { advanceSpeed: 0, nozzleAreaRatio: 1, thrust: 53.568867762424624 },
  { advanceSpeed: 1, nozzleAreaRatio: null, thrust: 36.537690512529096 },
  { advanceSpeed: 1, nozzleAreaRatio: 1.2, thrust: 43.40068333760904 },
  { advanceSpeed: 2, nozzleAreaRatio: 1, thrust: 32.84260216625154 },
  { advanceSpeed: 5, nozzleAreaRatio: null, thrust: 18.383407285636086 },
  { advanceSpeed: 5, nozzleAreaRatio: 1.2, thrust: 18.67536307895893 },
])(
  "100 W at $advanceSpeed m/s with nozzle area ratio $nozzleAreaRatio push at most $thrust N",
  ({ thrust, ...row }) => {
    const disc = { shaftPower: 100, discArea: 0.00384845, density: 998.6 };
    expect(relativeError(idealThrust({ ...disc, ...row }), thrust)).toBeLessThan(1e-11);
  },
);

// 10 N in sea water of 1025 kg/m³ from discs of four sizes: printed to the digits shown.
test.each([
  { diameter: 0.05, open: 15.76, nozzle: 11.15, v: 1.576 },
  { diameter: 0.07, open: 11.26, nozzle: 7.96, v: 1.126 },
  { diameter: 0.1, open: 7.88, nozzle: 5.57, v: 0.788 },
  { diameter: 0.15, open: 5.25, nozzle: 3.72, v: 0.525 },
])("10 N at rest ask for $open W from a disc of $diameter m, $nozzle W with a nozzle", (row) => {
  const loaded = { thrust: 10, discArea: discArea(row.diameter), density: 1025 };
  expect(Math.abs(idealBollardPower(loaded) - row.open)).toBeLessThan(0.0051);
  expect(Math.abs(inducedVelocity({ ...loaded, advanceSpeed: 0 }) - row.v)).toBeLessThan(0.00051);
  const withNozzle = idealNozzleThrust({ ...loaded, shaftPower: row.nozzle });
  expect(Math.abs(withNozzle - 10)).toBeLessThan((10 * 2 * 0.0051) / (3 * row.nozzle));
});

// At equal power an ideal nozzle that ends as wide as the disc gives 2^(1/3) of the open thrust (Küchemann & Weber
// 1953).
test("a nozzle of area ratio 1 gives 1.2599 times the open thrust at equal power", () => {
  const disc = { shaftPower: 80, discArea: 0.004, density: 1000 };
  expect(idealNozzleThrust(disc) / idealBollardThrust(disc)).toBeCloseTo(1.2599, 4);
  expect(idealNozzleThrust({ ...disc, areaRatio: 1.2 }) / idealNozzleThrust(disc)).toBeCloseTo(Math.cbrt(1.2), 12);
});

// One operating point solved independently with scipy (brentq): 5068.5917743087 rpm, D 70 mm, 998.6 kg/m³.
describe("coefficients", () => {
  const running = { density: 998.6, rotationRate: 5068.5917743087 / 60, diameter: 0.07 };

  test("thrust, torque and shaft power of a known point give back K_T 0.30, K_Q 0.035 and C_P 2π K_Q", () => {
    expect(relativeError(thrustCoefficient({ ...running, thrust: 51.3306902857 }), 0.3)).toBeLessThan(1e-10);
    const byTorque = powerCoefficient({ ...running, shaftPower: 2 * Math.PI * running.rotationRate * 0.4192006373 });
    expect(relativeError(byTorque * TORQUE_OVER_POWER_COEFFICIENT, 0.035)).toBeLessThan(1e-9);
    const powerRatio = powerCoefficient({ ...running, shaftPower: 222.5040224844 });
    expect(relativeError(powerRatio, 2 * Math.PI * 0.035)).toBeLessThan(1e-10);
  });

  test("static merit is 0.5962 by coefficients and by thrust and power", () => {
    const merit = staticMerit({ thrustCoefficient: 0.3, powerCoefficient: 2 * Math.PI * 0.035 });
    expect(relativeError(merit, 0.596175371301)).toBeLessThan(1e-11);
    const disc = { shaftPower: 222.5040224844, discArea: discArea(0.07), density: 998.6 };
    expect(relativeError(meritFromThrustAndPower({ ...disc, thrust: 51.3306902857 }), 0.596175371301)).toBeLessThan(
      1e-9,
    );
    expect(relativeError(thrustFromMerit({ ...disc, staticMerit: 0.596175371301 }), 51.3306902857)).toBeLessThan(1e-9);
    const torque = torqueCoefficientFromMerit({ thrustCoefficient: 0.3, staticMerit: 0.596175371301 });
    expect(relativeError(torque, 0.035)).toBeLessThan(1e-11);
  });

  // By hand: 0.7 π 50 0.076 = 8.35664 m/s; with 1 m/s across hypot 8.41626; times 0.02 m over 1.0541e-6 m²/s.
  test("the blade Reynolds number rests on the speed at 0.7 of the radius", () => {
    const blade = { chord: 0.02, diameter: 0.076, rotationRate: 50, kinematicViscosity: 1.0541e-6 };
    expect(relativeError(bladeReynolds({ ...blade, advanceSpeed: 0 }), 158555)).toBeLessThan(1e-4);
    expect(relativeError(bladeReynolds({ ...blade, advanceSpeed: 1 }), 159686)).toBeLessThan(1e-4);
  });
});
