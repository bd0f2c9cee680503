import { expect, test } from "vitest";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import { relative } from "../relative.ts";
import { plateau, runOf } from "../unit/comparePlateaus.ts";

/** Invented plateaus of two propellers. */
const A = { power: [12, 25, 41, 66, 98], thrust: [3.31, 5.47, 7.52, 10.42, 13.41] };
const B = { power: [10, 22, 45, 70, 110], thrust: [4.05, 6.71, 10.92, 14.49, 19.71] };
const COMMANDS = [1560, 1640, 1720, 1800, 1880];

const side = (name: string, { power, thrust }: typeof A) => {
  const plateaus = thrust.map((T, i) =>
    plateau({ thrust: T, electricalPower: power[i]!, command: COMMANDS[i]!, doubt: 0 }),
  );
  return { name, reductions: [runOf(plateaus)] };
};

const answers = () => compareVariants({ baseline: side("A", A), variant: side("B", B) }).answers;

/**
 * numpy 2.4.6 `linalg.lstsq` of ln T on 1 and ln P for each run, prediction and its standard error at the geometric mean of
 * 12 and 98 W (3 degrees of freedom each), difference with Welch-Satterthwaite 5.9610613284 and scipy 1.17.1
 * `stats.t.ppf(.975, nu)`.
 */
test("thrust at equal electrical power is that of two log-log lines read in the middle of what both cover", () => {
  const found = answers().find(({ quantity }) => quantity === "thrustAtEqualElectricalPower")!;
  expect(found.condition).toMatchObject({ low: 12, high: 98, unit: "W", extrapolated: false });
  expect(found.condition!.value).toSatisfy(relative(34.292856398964496, 1e-12));
  expect(found.ratio!.value).toSatisfy(relative(1.3566856084370273, 1e-10));
  expect(found.ratio!.interval95[0]).toSatisfy(relative(1.3403683790274799, 1e-9));
  expect(found.ratio!.interval95[1]).toSatisfy(relative(1.3732014787424431, 1e-9));
  expect(found.ratio!.degreesOfFreedom).toSatisfy(relative(5.9610613284420575, 1e-9));
  expect(found.ratio!.basis).toBe("withinRun");
});

/** The same for √T on 1 and the command, weights 1/T, at 1720; the thrust is the square, so its doubt counts twice. */
test("thrust at equal throttle is that of the square root of the thrust over the command", () => {
  const found = answers().find(({ quantity }) => quantity === "thrustAtEqualThrottle")!;
  expect(found.condition).toMatchObject({ value: 1720, low: 1560, high: 1880 });
  expect(found.ratio!.value).toSatisfy(relative(1.3714625322299752, 1e-10));
  expect(found.ratio!.interval95[0]).toSatisfy(relative(1.310474234534977, 1e-9));
  expect(found.ratio!.interval95[1]).toSatisfy(relative(1.4352891707009396, 1e-9));
});

/** Exact laws by momentum theory: T = c P^(2/3), so P at equal T is (T/c)^(3/2): ratio (1/1.2)^(3/2). */
test("ideal propellers whose thrusts are 1.2 to 1 at equal power need 1.2^-1.5 times the power at equal thrust", () => {
  const ideal = (factor: number) => {
    const power = [10, 20, 40, 80];
    return { power, thrust: power.map((P) => factor * P ** (2 / 3)) };
  };
  const found = compareVariants({ baseline: side("A", ideal(1)), variant: side("B", ideal(1.2)) }).answers;
  const ratioOf = (name: string) => found.find(({ quantity }) => quantity === name)!.ratio!.value;
  expect(ratioOf("thrustAtEqualElectricalPower")).toSatisfy(relative(1.2, 1e-10));
  expect(ratioOf("electricalPowerAtEqualThrust")).toSatisfy(relative(1.2 ** -1.5, 1e-10));
});
