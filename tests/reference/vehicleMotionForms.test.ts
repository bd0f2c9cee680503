import { describe, expect, test } from "vitest";
import { spheroidAddedMass, spheroidCoefficients } from "../../shared/vehicle/drag/addedMass.ts";
import { terminalSpeed } from "../../shared/vehicle/motion/closedForms.ts";
import { coastDown, startUp } from "../motionClosedForms.ts";
import { relativeError } from "../relative.ts";

describe("added mass of a spheroid", () => {
  // Lamb, Hydrodynamics, art. 114-115: the printed formulas with python 3 floats.
  const EXACT = [
    { ratio: 1.5, axial: 0.303749447571, lateral: 0.622084408905, turning: 0.028637720328 },
    { ratio: 2, axial: 0.210015048977, lateral: 0.70421042585, turning: 0.114757789171 },
    { ratio: 3, axial: 0.121968607082, lateral: 0.803899094435, turning: 0.313807332763 },
    { ratio: 4, axial: 0.081557250088, lateral: 0.859760582341, turning: 0.470409199572 },
    { ratio: 5, axial: 0.059121170898, lateral: 0.89426053962, turning: 0.582651928734 },
    { ratio: 6, axial: 0.045182893471, lateral: 0.917123420393, turning: 0.663451048146 },
    { ratio: 8, axial: 0.029252774741, lateral: 0.944728159895, turning: 0.767824978718 },
    { ratio: 10, axial: 0.020705918077, lateral: 0.960234909268, turning: 0.829768350612 },
    // The same formulas with 50 digits, mpmath 1.3.0: floats lose all of them in k' here.
    { ratio: 1.0001, axial: 0.49994000625651, lateral: 0.500029998671478, turning: 5.33233027623993e-13 },
    { ratio: 1.01, axial: 0.494061944577261, lateral: 0.502986763277244, turning: 5.23418015502511e-7 },
    { ratio: 1.05, axial: 0.471488925098185, lateral: 0.51467390629231, turning: 6.074756442516e-5 },
    { ratio: 1.06, axial: 0.466123581347863, lateral: 0.517532135280704, turning: 0.000103063789648551 },
  ];
  test.each(EXACT)("at a/b $ratio agrees to 9 digits", ({ ratio, ...exact }) => {
    const found = spheroidCoefficients(ratio);
    for (const key of ["axial", "lateral", "turning"] as const)
      expect(relativeError(found[key], exact[key])).toBeLessThan(1e-9);
  });

  // Lamb's printed table (from memory), three decimals; its .702 at 2.00 is 0.0022 from the formula.
  test.each([
    { ratio: 1.5, axial: 0.305, lateral: 0.621 },
    { ratio: 2, axial: 0.209, lateral: 0.702 },
    { ratio: 2.99, axial: 0.122, lateral: 0.803 },
    { ratio: 3.99, axial: 0.082, lateral: 0.86 },
    { ratio: 4.99, axial: 0.059, lateral: 0.895 },
    { ratio: 6.01, axial: 0.045, lateral: 0.918 },
    { ratio: 8.01, axial: 0.029, lateral: 0.945 },
    { ratio: 9.97, axial: 0.021, lateral: 0.96 },
  ])("at a/b $ratio agrees with Lamb's printed table", ({ ratio, axial, lateral }) => {
    const found = spheroidCoefficients(ratio);
    expect(Math.abs(found.axial - axial)).toBeLessThan(0.0025);
    expect(Math.abs(found.lateral - lateral)).toBeLessThan(0.0025);
  });

  // Lamb, art. 92: half the displaced mass.
  test("a sphere drags half of the mass it displaces along, and turns freely", () => {
    const { axial, lateral, turning } = spheroidCoefficients(1);
    expect(axial).toBeCloseTo(0.5, 15);
    expect(lateral).toBeCloseTo(0.5, 15);
    expect(turning).toBe(0);
    const mass = spheroidAddedMass({ length: 0.2, diameter: 0.2, density: 1000, motion: "lateral" });
    expect(relativeError(mass, (0.5 * 1000 * Math.PI * 0.2 ** 3) / 6)).toBeLessThan(1e-14);
  });
});

const BODY = { mass: 17.5, quadratic: 22.5 };
const expectMotion = (found: { speed: number; distance: number }, speed: number, distance: number) => {
  expect(relativeError(found.speed, speed)).toBeLessThan(1e-11);
  expect(relativeError(found.distance, distance)).toBeLessThan(1e-11);
};

// Separation of variables, e.g. V = V0/(1 + V0 t/l) with l = 0.777777777778 m; python 3 floats.
test.each([
  { time: 0.5, speed: 0.763636363636, distance: 0.5251000806 },
  { time: 1, speed: 0.512195121951, distance: 0.835733684403 },
  { time: 2, speed: 0.308823529412, distance: 1.229239180992 },
  { time: 5, speed: 0.140939597315, distance: 1.839358092701 },
  { time: 10, speed: 0.073943661972, distance: 2.341046484425 },
])("coasting for $time s by quadratic drag leaves $speed m/s after $distance m", ({ time, speed, distance }) => {
  expectMotion(coastDown(BODY, 1.5, time), speed, distance);
});

// scipy 1.17.1: solve_ivp(lambda t, y: [(-3*y[0] - 22.5*y[0]*abs(y[0]))/17.5, y[0]], (0, 10), [1.5, 0], method="DOP853",
// rtol=1e-13, atol=1e-14).
test.each([
  { time: 1, speed: 0.45582423671321887, distance: 0.7930879648650143 },
  { time: 2, speed: 0.24959019517946232, distance: 1.1282000260556801 },
  { time: 5, speed: 0.08514925511318934, distance: 1.5646336772995637 },
  { time: 10, speed: 0.026422093679649837, distance: 1.8081265462071303 },
])("with a linear term coasting for $time s leaves $speed m/s after $distance m", ({ time, speed, distance }) => {
  expectMotion(coastDown({ ...BODY, linear: 3 }, 1.5, time), speed, distance);
});

// V = √(F/b) tanh(t √(F b)/M), x = (M/b) ln cosh(...), F 40 N; python 3 floats.
test.each([
  { time: 1, speed: 1.249561677249, distance: 0.819044270924 },
  { time: 3, speed: 1.333242357727, distance: 3.460912061236 },
])("40 N from rest for $time s gives $speed m/s after $distance m", ({ time, speed, distance }) => {
  expectMotion(startUp(BODY, 40, time), speed, distance);
});

// scipy 1.17.1: solve_ivp(lambda t, y: [(40 - 3*y[0] - 22.5*y[0]*abs(y[0]))/17.5, y[0]], (0, 3), [0, 0], method="DOP853",
// rtol=1e-13, atol=1e-14).
test.each([
  { time: 0.5, speed: 0.8948846606401104, distance: 0.2501408115253654 },
  { time: 1, speed: 1.1925233427088202, distance: 0.7895224391291102 },
  { time: 3, speed: 1.268250920579584, distance: 3.3038078039150887 },
])("40 N against drag with a linear term for $time s gives $speed m/s", ({ time, speed, distance }) => {
  expectMotion(startUp({ ...BODY, linear: 3 }, 40, time), speed, distance);
});

// √(2 W/(ρ C_D A)) by hand: sphere of 0.1 m, 2 N, C_D 0.47; sphere of 0.05 m, 0.5 N; disc of 0.2 m, 5 N, C_D 1.05.
test.each([
  { force: 2, area: (0.47 * Math.PI * 0.1 ** 2) / 4, speed: 1.040964996135 },
  { force: 0.5, area: (0.47 * Math.PI * 0.05 ** 2) / 4, speed: 1.040964996135 },
  { force: 5, area: (1.05 * Math.PI * 0.2 ** 2) / 4, speed: 0.550592655741 },
  { force: 40, area: 0.045, speed: 1.333333333333 },
])("$force N sinks a drag area of $area m² at $speed m/s", ({ force, area, speed }) => {
  expect(relativeError(terminalSpeed({ force, quadratic: 0.5 * 1000 * area }), speed)).toBeLessThan(1e-11);
});

test("terminal speed with a linear term balances the two forces", () => {
  const V = terminalSpeed({ force: 40, quadratic: 22.5, linear: 3 });
  expect(relativeError(22.5 * V * V + 3 * V, 40)).toBeLessThan(1e-14);
});
