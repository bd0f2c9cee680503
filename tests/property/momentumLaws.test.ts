import fc from "fast-check";
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

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const shaftPower = between(0.01, 5000);
const thrust = between(0.01, 500);
const diameter = between(0.01, 0.5);
const density = between(0.9, 1050);
const speed = between(0, 10);
const poweredDisc = fc.record({ shaftPower, discArea: diameter.map(discArea), density });
const advancingDisc = fc.record({ thrust, discArea: diameter.map(discArea), density, advanceSpeed: speed });

/** `found` is `expected` within rounding. */
function expectSame(found: number, expected: number) {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

test("eight times the power pushes four times as hard", () => {
  fc.assert(
    fc.property(poweredDisc, (disc) => {
      expectSame(idealBollardThrust({ ...disc, shaftPower: 8 * disc.shaftPower }), 4 * idealBollardThrust(disc));
    }),
  );
});

test("twice the diameter at equal power pushes 4^(1/3) as hard", () => {
  fc.assert(
    fc.property(shaftPower, diameter, density, (P, D, rho) => {
      const at = (d: number) => idealBollardThrust({ shaftPower: P, discArea: discArea(d), density: rho });
      expectSame(at(2 * D), Math.cbrt(4) * at(D));
    }),
  );
});

test("least power and greatest thrust undo each other", () => {
  fc.assert(
    fc.property(poweredDisc, ({ shaftPower: P, ...disc }) => {
      const greatest = idealBollardThrust({ ...disc, shaftPower: P });
      expectSame(idealBollardPower({ ...disc, thrust: greatest }), P);
    }),
  );
});

test("a nozzle of area ratio 1/2 is the open disc, and a wider one always pushes harder", () => {
  fc.assert(
    fc.property(poweredDisc, between(0.1, 2), between(1.01, 2), (disc, areaRatio, wider) => {
      expectSame(idealNozzleThrust({ ...disc, areaRatio: 0.5 }), idealBollardThrust(disc));
      const narrow = idealNozzleThrust({ ...disc, areaRatio });
      expect(idealNozzleThrust({ ...disc, areaRatio: areaRatio * wider })).toBeGreaterThan(narrow);
    }),
  );
});

test("the induced velocity obeys the momentum balance T = 2 ρ A (V + v) v", () => {
  fc.assert(
    fc.property(advancingDisc, (disc) => {
      const v = inducedVelocity(disc);
      expectSame(2 * disc.density * disc.discArea * (disc.advanceSpeed + v) * v, disc.thrust);
    }),
  );
});

test("ideal efficiency is that of the loading coefficient, and falls with thrust", () => {
  fc.assert(
    fc.property(advancingDisc, between(0.1, 10), between(1.1, 3), (disc, advanceSpeed, more) => {
      const moving = { ...disc, advanceSpeed };
      const loading = disc.thrust / (0.5 * disc.density * disc.discArea * advanceSpeed ** 2);
      expectSame(idealEfficiency(moving), 2 / (1 + Math.sqrt(1 + loading)));
      expect(idealEfficiency({ ...moving, thrust: more * disc.thrust })).toBeLessThan(idealEfficiency(moving));
    }),
  );
});

const running = fc.record({ density, rotationRate: between(1, 500), diameter });

test("merit is the same by coefficients and by thrust and power, and its inverses undo it", () => {
  fc.assert(
    fc.property(running, thrust, shaftPower, (at, T, P) => {
      const K_T = thrustCoefficient({ ...at, thrust: T });
      const C_P = powerCoefficient({ ...at, shaftPower: P });
      const merit = staticMerit({ thrustCoefficient: K_T, powerCoefficient: C_P });
      const disc = { discArea: discArea(at.diameter), density: at.density, shaftPower: P };
      expectSame(meritFromThrustAndPower({ ...disc, thrust: T }), merit);
      expectSame(thrustFromMerit({ ...disc, staticMerit: merit }), T);
      expectSame(2 * Math.PI * torqueCoefficientFromMerit({ thrustCoefficient: K_T, staticMerit: merit }), C_P);
    }),
  );
});

test("the ideal disc has merit 1", () => {
  fc.assert(
    fc.property(poweredDisc, (disc) => {
      expectSame(meritFromThrustAndPower({ ...disc, thrust: idealBollardThrust(disc) }), 1);
    }),
  );
});

test("Reynolds number does not depend on the sign of the advance speed and grows with it", () => {
  const blade = { chord: 0.02, diameter: 0.076, rotationRate: 50, kinematicViscosity: 1e-6 };
  fc.assert(
    fc.property(speed, (advanceSpeed) => {
      const ahead = bladeReynolds({ ...blade, advanceSpeed });
      expect(bladeReynolds({ ...blade, advanceSpeed: -advanceSpeed })).toBe(ahead);
      expect(ahead).toBeGreaterThanOrEqual(bladeReynolds({ ...blade, advanceSpeed: 0 }));
    }),
  );
});
