import { describe, expect, test } from "vitest";
import { integrate } from "../../shared/numeric/dormandPrince.ts";
import { relative, relativeError } from "../relative.ts";
import { partsOf, solvedTether, tetherRequest } from "../tetherCase.ts";
import { criticalAngle, pulledAcross, sidewaysCatenary, squareDrag, tetherDragBound } from "../tetherClosedForms.ts";

/**
 * A tether without net weight and tangential drag in a uniform current is a catenary on its side:
 * Pode, Tables for computing the equilibrium configuration of a flexible cable in a uniform stream, DTMB report 687 (1951),
 * with zero tangential force; Berteaux, Buoy Engineering (1976). The numbers below were computed from that form in double
 * precision and again by scipy 1.17.1 `solve_ivp` (DOP853, rtol 1e-13) with shooting; the two agree to 10 digits.
 */
const PLAIN = { density: 1025, normalDragCoefficient: 1.2, diameter: 0.006, speed: 1 };
const weightless = { diameter: 0.006, tangentialDragCoefficient: 0 };
const ahead = { density: 1025, current: { kind: "uniform", speed: 1, direction: 0 } } as const;

describe("a tether between two ends on a line square to the current", () => {
  const request = tetherRequest({
    tether: { ...weightless, length: 60 },
    surroundings: ahead,
    vehicle: { depth: 50 },
    given: { what: "upperEnd", upperEnd: { forward: 0, starboard: 0 } },
  });
  const solved = solvedTether(request);

  test("the closed form has the published parameter, belly and angle", () => {
    const { parameter, belly, endAngle } = sidewaysCatenary({ length: 60, distance: 50 });
    expect(parameter).toSatisfy(relative(23.477076156326, 1e-12));
    expect(belly).toSatisfy(relative(14.61718988, 1e-10));
    expect((endAngle * 180) / Math.PI).toSatisfy(relative(38.0456392995, 1e-11));
  });

  test.each([
    { what: "drag on the vehicle's end", found: solved.forceOnVehicle.forward.value, expected: 68.2231894959 },
    { what: "drag on the upper end", found: solved.forceOnUpperEnd.forward.value, expected: 68.2231894959 },
    { what: "drag on both", found: solved.drag.forward, expected: 136.4463789917 },
    { what: "pull of the vehicle up", found: -solved.forceOnVehicle.down.value, expected: 53.3893671807 },
    { what: "greatest tension", found: solved.greatestTension.tension.value, expected: 86.6304110168 },
    { what: "least tension", found: Math.min(...solved.points.map((p) => p.tension)), expected: 86.6304110168 },
    { what: "belly", found: solved.belly.distance.value, expected: 14.61718988 },
  ])("the solver finds the $what", ({ found, expected }) => {
    expect(found).toSatisfy(relative(expected, 1e-8));
  });

  test("straight and square to the flow it would have 221.4 N in all", () => {
    expect(squareDrag(PLAIN)).toSatisfy(relative(3.69, 1e-14));
    expect(tetherDragBound({ ...PLAIN, length: 60 })).toSatisfy(relative(221.4, 1e-14));
    expect(solved.dragBound).toSatisfy(relative(221.4, 1e-14));
  });
});

describe.each([
  { pull: 20, length: 50, against: 44.872857701, across: 15.8156596639 },
  {
    pull: 50,
    length: 50,
    against: 38.2533988578,
    across: 27.325857382,
    end: { against: 48.2592554914, across: 13.0783890221 },
  },
  { pull: 50, length: 100, against: 87.3637197025, across: 36.5376651455 },
])("a tether of $length m that pulls its vehicle straight across with $pull N", ({ pull, length, ...expected }) => {
  test("ends where the closed form says", () => {
    const { againstFlow, across } = pulledAcross({ pull, squareDrag: 3.69, length });
    expect(againstFlow).toSatisfy(relative(expected.against, 1e-10));
    expect(across).toSatisfy(relative(expected.across, 1e-10));
  });

  test("ends there by the solver too, which starts from the force", () => {
    const solved = solvedTether(
      tetherRequest({
        tether: { ...weightless, length },
        surroundings: ahead,
        vehicle: { depth: 100 },
        given: { what: "forceOnVehicle", forceOnVehicle: { forward: 0, starboard: 0, down: -pull } },
      }),
    );
    const end = solved.points.at(-1)!;
    expect(-end.forward).toSatisfy(relative(expected.against, 1e-8));
    expect(100 - end.depth).toSatisfy(relative(expected.across, 1e-8));
    if (expected.end === undefined) return;
    expect(solved.forceOnUpperEnd.forward.value).toSatisfy(relative(expected.end.against, 1e-8));
    expect(solved.forceOnUpperEnd.down.value).toSatisfy(relative(expected.end.across, 1e-8));
    expect(pulledAcross({ pull, squareDrag: 3.69, length }).endForce.againstFlow).toSatisfy(
      relative(expected.end.against, 1e-10),
    );
  });
});

/** scipy 1.17.1 `solve_ivp`, DOP853, rtol = atol = 1e-13, of d(T t)/ds + f = 0 from the vehicle up; plane cases. */
const PLANE_CASES = [
  {
    name: "weight and a uniform current",
    tether: { diameter: 0.008, length: 50, netWeightPerLength: 0.3 },
    current: { kind: "uniform", speed: 0.8, direction: 0 },
    end: [-35.3089525117, 31.1305397532],
    force: [48.0025524775, 19.9980310657],
    tension: 52.001598926,
  },
  {
    name: "no weight and a current that falls with depth",
    // The recorded case has U = 0.2 + 0.6 z/50 with z up from the vehicle, which lies 50 m deep here.
    tether: { diameter: 0.006, length: 50 },
    current: {
      kind: "sheared",
      direction: 0,
      profile: [
        { depth: 0, speed: 0.8 },
        { depth: 50, speed: 0.2 },
      ],
    },
    end: [-11.3546912197, 46.4050388066],
    force: [30.1376440253, 27.201505768],
    tension: 40.5980233933,
  },
] as const;

test.each(PLANE_CASES)("$name: the upper end lies and pulls as scipy finds", ({ tether, current, ...expected }) => {
  const given = { what: "forceOnVehicle", forceOnVehicle: { forward: 5, starboard: 0, down: -40 } } as const;
  const surroundings = current.kind === "uniform" ? current : { ...current, profile: [...current.profile] };
  const solved = solvedTether(
    tetherRequest({ tether, surroundings: { density: 1025, current: surroundings }, vehicle: { depth: 50 }, given }),
  );
  const end = solved.points.at(-1)!;
  expect(end.forward).toSatisfy(relative(expected.end[0], 1e-7));
  expect(50 - end.depth).toSatisfy(relative(expected.end[1], 1e-7));
  expect(end.starboard).toBe(0);
  expect(end.tension).toSatisfy(relative(expected.tension, 1e-7));
  expect(solved.forceOnUpperEnd.forward.value).toSatisfy(relative(expected.force[0], 1e-7));
  expect(solved.forceOnUpperEnd.down.value).toSatisfy(relative(expected.force[1], 1e-7));
});

/**
 * Weight, sheared current across the bow and a moving vehicle in three dimensions, recorded with scipy 1.17.1, numpy 2.4.6:
 * `solve_ivp` (DOP853, rtol = atol = 1e-13, max_step L/400), with both ends given by `optimize.root` on the force and again
 * by `solve_bvp` (tol 1e-7) from a shape that was bent first; the two agree to 1e-9.
 */
const PROFILE = [
  { depth: 0, speed: 0.9 },
  { depth: 15, speed: 0.6 },
  { depth: 40, speed: 0.25 },
  { depth: 80, speed: 0.1 },
];
const sheared = { kind: "sheared", direction: 0.7, profile: PROFILE } as const;
const moving = { forward: 0.3, starboard: -0.1, down: 0.05 };

test("in three dimensions with the force given the upper end lies and pulls as scipy finds", () => {
  const solved = solvedTether(
    tetherRequest({
      tether: { diameter: 0.007, length: 80, netWeightPerLength: 0.25 },
      surroundings: { density: 1025, current: sheared },
      vehicle: { depth: 60, velocity: moving },
      given: { what: "forceOnVehicle", forceOnVehicle: { forward: -10, starboard: 4, down: -15 } },
    }),
  );
  const end = solved.points.at(-1)!;
  const expected = [14.643298393830694, 28.67249279337946, 13.477154050570084];
  for (const [i, part] of partsOf(solved.forceOnUpperEnd).entries()) {
    expect(part).toSatisfy(relative(expected[i]!, 1e-7));
  }
  expect(end.forward).toSatisfy(relative(-28.464201092252026, 1e-7));
  expect(end.starboard).toSatisfy(relative(-27.993758647770584, 1e-7));
  expect(Math.abs(end.depth - -1.758740544771933)).toBeLessThan(80e-7);
});

const SPACE_CASES = [
  {
    name: "a sinking tether that moves with its vehicle",
    tether: { diameter: 0.007, length: 80, netWeightPerLength: 0.25 },
    surroundings: { density: 1025, current: sheared },
    vehicle: { depth: 60, velocity: moving },
    motion: "bothEnds",
    upperEnd: { forward: 12, starboard: -8 },
    onVehicle: [0.7534676207792596, 8.666271654634446, -5.770293629803912],
    onUpperEnd: [7.758989898961284, 23.028280275190877, 9.611539958851635],
  },
  {
    name: "a floating tether with its upper end fixed",
    tether: { diameter: 0.007, length: 80, netWeightPerLength: -0.1, tangentialDragCoefficient: 0.02 },
    surroundings: { density: 1000, current: sheared },
    vehicle: { depth: 60, velocity: { forward: 0.3, starboard: -0.1 } },
    motion: "upperEndFixed",
    upperEnd: { forward: 12, starboard: -8 },
    onVehicle: [8.158525015296835, 11.749206742657249, -21.269904068868435],
    onUpperEnd: [13.7141029989241, 16.474367992922904, 4.603743257539105],
  },
  {
    name: "a slack heavy tether in a current from the quarter",
    tether: { diameter: 0.01, length: 100, netWeightPerLength: 0.4 },
    surroundings: { density: 1025, current: { kind: "uniform", speed: 0.5, direction: 2.5 } },
    vehicle: { depth: 40 },
    motion: "bothEnds",
    upperEnd: { forward: 30, starboard: 20 },
    onVehicle: [-11.134296657085633, 12.97345252343764, 5.354412049518426],
    onUpperEnd: [-25.681769482356778, 15.28474421513421, 16.63669621416312],
  },
] as const;

test.each(SPACE_CASES)("$name: the forces at both ends are those that scipy finds", (spaceCase) => {
  const { upperEnd, onVehicle, onUpperEnd, name: _, surroundings, ...rest } = spaceCase;
  const solved = solvedTether(
    tetherRequest({ ...structuredClone({ ...rest, surroundings }), given: { what: "upperEnd", upperEnd } } as never),
  );
  const size = Math.hypot(...onVehicle);
  for (const [i, part] of partsOf(solved.forceOnVehicle).entries()) {
    expect(Math.abs(part - onVehicle[i]!)).toBeLessThan(1e-7 * size);
  }
  for (const [i, part] of partsOf(solved.forceOnUpperEnd).entries()) {
    expect(Math.abs(part - onUpperEnd[i]!)).toBeLessThan(1e-7 * Math.hypot(...onUpperEnd));
  }
});

/**
 * Catenary of a heavy line in still water: Irvine, Cable Structures (1981), ch. 1, from memory of its form
 * sqrt(L² - v²) = 2 a sinh(h/(2 a)), solved by scipy 1.17.1 `brentq` for L 70 m, h 30 m, v 20 m, w 0.5 N/m.
 */
test("a slack heavy tether in still water hangs as a catenary", () => {
  const solved = solvedTether(
    tetherRequest({
      tether: { diameter: 0.01, length: 70, netWeightPerLength: 0.5 },
      surroundings: { density: 1025, current: { kind: "uniform", speed: 0, direction: 0 } },
      vehicle: { depth: 20 },
      given: { what: "upperEnd", upperEnd: { forward: 0, starboard: 30 } },
    }),
  );
  expect(solved.forceOnVehicle.starboard.value).toSatisfy(relative(3.165603876642279, 1e-8));
  expect(solved.forceOnVehicle.down.value).toSatisfy(relative(12.41170364329354, 1e-8));
  expect(solved.forceOnUpperEnd.down.value).toSatisfy(relative(22.588296356706465, 1e-8));
});

describe("the critical angle of a long heavy tether", () => {
  /** R sin²φ = w cos φ: Pode, DTMB report 687 (1951); R 3.69 N/m. */
  test.each([
    { weightPerLength: 0.1, degrees: 9.4106929467, cosine: 0.986541663371 },
    { weightPerLength: 0.5, degrees: 20.8457592957, cosine: 0.934541771982 },
    { weightPerLength: 2, degrees: 40.0869600577, cosine: 0.765067977157 },
  ])("of $weightPerLength N/m is $degrees°, by the form and by the solver", ({ weightPerLength, degrees, cosine }) => {
    const angle = criticalAngle({ squareDrag: 3.69, weightPerLength });
    expect((angle * 180) / Math.PI).toSatisfy(relative(degrees, 1e-11));
    expect(Math.cos(angle)).toSatisfy(relative(cosine, 1e-11));
    const solved = solvedTether(
      tetherRequest({
        tether: { ...weightless, length: 200, netWeightPerLength: weightPerLength },
        surroundings: ahead,
        vehicle: { depth: 300 },
        given: { what: "forceOnVehicle", forceOnVehicle: { forward: 0, starboard: 0, down: 0 } },
      }),
    );
    const end = solved.points.at(-1)!;
    expect(relativeError(Math.atan2(300 - end.depth, -end.forward), angle)).toBeLessThan(1e-6);
  });
});

test("the integrator gives e^-10 and keeps a circle closed", () => {
  // exp(-10) to 16 digits: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 4.4.
  const decay = integrate({
    derivative: (_, y, slope) => slope.set([-y[0]!]),
    start: Float64Array.of(1),
    from: 0,
    to: 10,
    tolerance: 1e-12,
    errorSize: (_, size) => size.fill(1),
  });
  expect(Math.abs(decay.end[0]! - 4.539992976248485e-5)).toBeLessThan(1e-11);
  const circle = integrate({
    derivative: (_, y, slope) => slope.set([-y[1]!, y[0]!]),
    start: Float64Array.of(1, 0),
    from: 0,
    to: 2 * Math.PI,
    tolerance: 1e-11,
    errorSize: (_, size) => size.fill(1),
  });
  expect(Math.hypot(circle.end[0]! - 1, circle.end[1]!)).toBeLessThan(1e-9);
});

test("greatest tension and belly have the doubt that diameter, coefficients and weight give them", () => {
  // scipy 1.17.1: solve_ivp(..., method="DOP853", rtol=1e-12, atol=1e-12) of d(T t)/ds + f = 0 from the vehicle, the force
  // there by fsolve so that the end lands; greatest of 4001 points; central differences of 1e-3 of diameter (± 5 %), C_n
  // (± 20 %), C_t (± 50 %) and weight (± 10 %), added in squares.
  const { greatestTension, belly, forceOnVehicle } = solvedTether(
    tetherRequest({
      tether: {
        ...{ diameter: 0.006, length: 60, normalDragCoefficient: 1.2, tangentialDragCoefficient: 0.02 },
        netWeightPerLength: 0.5,
        relativeUncertainties: {
          ...{ diameter: 0.05, normalDragCoefficient: 0.2, tangentialDragCoefficient: 0.5, netWeightPerLength: 0.1 },
        },
      },
      surroundings: { density: 1025, current: { kind: "uniform", speed: 0.7, direction: Math.PI } },
      vehicle: { depth: 50 },
      given: { what: "upperEnd", upperEnd: { forward: -20, starboard: 0 } },
    }),
  );
  expect(greatestTension.tension.value).toSatisfy(relative(72.89149485, 1e-8));
  expect(greatestTension.tension.standardUncertainty).toSatisfy(relative(10.6902167, 1e-3));
  expect(belly.distance.value).toSatisfy(relative(11.54702777, 1e-5));
  expect(belly.distance.standardUncertainty).toSatisfy(relative(0.00418358, 0.02));
  expect(forceOnVehicle.forward.standardUncertainty).toSatisfy(relative(8.87518671, 1e-3));
});
