import { describe, expect, test } from "vitest";
import { TetherRequest } from "../../shared/model/vehicle/tetherShape.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { solveTether } from "../../shared/vehicle/tether/solveTether.ts";
import { solvedTether, tetherRequest } from "../tetherCase.ts";

const base = tetherRequest({
  tether: { diameter: 0.006, length: 60, netWeightPerLength: 0.05 },
  surroundings: { density: 1025, current: { kind: "uniform", speed: 0.5, direction: 0 } },
  vehicle: { depth: 50 },
  given: { what: "upperEnd", upperEnd: { forward: 0, starboard: 0 } },
});
const withTether = (change: Partial<TetherRequest["tether"]>): TetherRequest => ({
  ...base,
  tether: { ...base.tether, ...change },
});
const upperEnd = (forward: number, depth = 0): TetherRequest["given"] => ({
  what: "upperEnd",
  upperEnd: { forward, starboard: 0, depth },
});
const profile = (...depths: number[]): TetherRequest => ({
  ...base,
  surroundings: {
    ...base.surroundings,
    current: { kind: "sheared", direction: 0, profile: depths.map((depth) => ({ depth, speed: 0.5 })) },
  },
});

describe("what no tether can answer is refused with the field, the value and the need", () => {
  test.each([
    {
      what: "a tether shorter than the depth",
      request: withTether({ length: 40 }),
      where: "tether.length",
      says: /40\.0\sm does not reach a vehicle 50\.0\sm below its upper end\. Needed: more than 50\.0\sm\./,
    },
    {
      what: "a tether as long as the depth",
      request: withTether({ length: 50 }),
      where: "tether.length",
      says: /does not reach/,
    },
    {
      what: "a tether shorter than the straight distance",
      request: { ...base, given: upperEnd(40) },
      where: "tether.length",
      says: /60\.0\sm does not reach over 64\.0\sm between its ends/,
    },
    {
      what: "no diameter",
      request: withTether({ diameter: 0 }),
      where: "tether.diameter",
      says: /The diameter is 0 m\. Needed: greater than 0 m/,
    },
    {
      what: "a negative length",
      request: withTether({ length: -5 }),
      where: "tether.length",
      says: /length paid out is -5 m/,
    },
    {
      what: "a missing density",
      request: { ...base, surroundings: { ...base.surroundings, density: Number.NaN } },
      where: "surroundings.density",
      says: /not a number/,
    },
    {
      what: "a negative tangential coefficient",
      request: withTether({ tangentialDragCoefficient: -0.01 }),
      where: "tether.tangentialDragCoefficient",
      says: /Needed: at least 0\./,
    },
    {
      what: "a profile not in order",
      request: profile(0, 20, 10),
      where: "surroundings.current.profile[2].depth",
      says: /10\.0\sm follows on 20\.0\sm/,
    },
    {
      what: "a depth given twice",
      request: profile(0, 20, 20),
      where: "surroundings.current.profile[2].depth",
      says: /20\.0\sm follows on 20\.0\sm/,
    },
  ])("$what", ({ request, where, says }) => {
    let problem: unknown;
    try {
      solveTether(request);
    } catch (error) {
      problem = error;
    }
    expect(problem).toBeInstanceOf(InputProblem);
    expect((problem as InputProblem).problem.where).toBe(where);
    expect((problem as InputProblem).message).toMatch(says);
  });

  test.each([
    { path: ["tether", "diameter"], change: { tether: { ...base.tether, diameter: 0 } } },
    { path: ["tether", "length"], change: { tether: { ...base.tether, length: -1 } } },
    { path: ["vehicle", "depth"], change: { vehicle: { ...base.vehicle, depth: -1 } } },
  ])("the document refuses $path too", ({ path, change }) => {
    const parsed = TetherRequest.safeParse({ ...base, ...change });
    expect(parsed.error?.issues[0]?.path).toEqual(path);
  });
});

describe("what a reader must know stands next to the result", () => {
  const codesOf = (request: TetherRequest) => solvedTether(request).warnings.map(({ code }) => code);

  test("nothing, in slow water with a sinking tether that does not reach the bottom", () => {
    const slow = { ...base.surroundings, current: { kind: "uniform", speed: 0.05, direction: 0 } as const };
    expect(codesOf({ ...base, surroundings: { ...slow, seabedDepth: 80 } })).toEqual([]);
  });

  test.each([
    { code: "vehicle.tether-strumming", request: base },
    { code: "vehicle.tether-overload", request: withTether({ strength: 5 }) },
    { code: "vehicle.tether-taut", request: withTether({ length: 50.02 }) },
    { code: "vehicle.tether-beyond-profile", request: profile(0, 30) },
    { code: "vehicle.tether-above-surface", request: withTether({ netWeightPerLength: -2, length: 80 }) },
    {
      code: "vehicle.tether-on-bottom",
      request: {
        ...withTether({ netWeightPerLength: 3, length: 80 }),
        surroundings: { ...base.surroundings, seabedDepth: 51 },
      },
    },
  ])("$code", ({ code, request }) => {
    expect(codesOf(request)).toContain(code);
  });

  test("a coefficient that allows for strumming is not warned of, nor a strength that holds", () => {
    expect(codesOf(withTether({ normalDragCoefficient: 2, strength: 500 }))).toEqual([]);
  });
});

describe("tethers without a certain shape", () => {
  const still = { ...base.surroundings, current: { kind: "uniform", speed: 0, direction: 0 } as const };

  test("without weight in still water there is no force and no shape", () => {
    const solution = solveTether({ ...withTether({ netWeightPerLength: 0 }), surroundings: still });
    expect(solution.state).toBe("slack");
  });

  test("a heavy tether right under the boat in still water hangs in two legs", () => {
    // Two vertical legs, 55 m and 5 m: common practice, no source; statics of a hanging line.
    const solved = solvedTether({ ...base, surroundings: still });
    expect(solved.forceOnVehicle.down.value).toBeCloseTo(5 * 0.05, 4);
    expect(solved.forceOnUpperEnd.down.value).toBeCloseTo(55 * 0.05, 4);
    expect(solved.forceOnVehicle.forward.value).toBeCloseTo(0, 4);
  });

  test("both ends at one place, with a loop between them", () => {
    // Two legs of half the length: common practice, no source; statics of a hanging line.
    const solved = solvedTether({ ...base, surroundings: still, given: upperEnd(0, 50) });
    expect(solved.forceOnVehicle.down.value).toBeCloseTo(30 * 0.05, 4);
  });

  test("a tether far too long trails down a fast current in two legs and hardly pulls", () => {
    const solved = solvedTether({ ...base, given: upperEnd(0, 50) });
    expect(solved.convergence.miss).toBeLessThan(1e-5);
    expect(solved.greatestTension.tension.value).toBeLessThan(0.2 * solved.dragBound);
    expect(Math.max(...solved.points.map((point) => point.forward))).toBeGreaterThan(28);
  });

  test("one that is not found says by how much it misses, and still gives the bound", () => {
    // 2.7 times the straight distance, without weight, in weak water that turns round with depth: a shape is not found.
    const depth = 10.183201609179378;
    const profile = [
      { depth: 0, speed: 0.13009754507365517 },
      { depth: depth / 3, speed: 0.05203901802946207 },
      { depth, speed: -0.022528077112063748 },
    ];
    const direction = Math.atan2(0.7930189155812114, -0.6091970120826262);
    const odd = tetherRequest({
      tether: { diameter: 4.153044250030071 / (0.5 * 1025 * 1.2), length: 256.15870760914953 },
      surroundings: { density: 1025, current: { kind: "sheared", direction, profile } },
      vehicle: { depth, velocity: { forward: 0.0241364949716614 } },
      given: { what: "upperEnd", upperEnd: { forward: -92.248790153692, starboard: 1.7462417474376597 } },
    });
    const solution = solveTether(odd);
    expect(solution).toMatchObject({ state: "failed", convergence: { converged: false } });
    expect(solution.state === "failed" && solution.reason).toMatch(/misses it by .* m\. Pay out less/);
    expect(solution.dragBound).toBeGreaterThan(0);
  });
});
