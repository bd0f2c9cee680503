import fc from "fast-check";
import { expect, test } from "vitest";
import { type SolvedTether, TetherRequest } from "../../shared/model/vehicle/tetherShape.ts";
import { relative } from "../relative.ts";
import { partsOf, solvedTether } from "../tetherCase.ts";
import { pulledAcross, sidewaysCatenary, tetherDragBound } from "../tetherClosedForms.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** What a builder may meet: tethers of a few millimetres, up to three times the straight distance, currents up to 1.5 m/s. */
const scene = fc.record({
  diameter: between(0.003, 0.02),
  slack: between(1.02, 3),
  weight: between(-0.5, 1.5),
  tangential: between(0, 0.03),
  speed: between(0.1, 1.5),
  direction: between(-3, 3),
  depth: between(5, 80),
  forward: between(-40, 40),
  starboard: between(-40, 40),
  ahead: between(-1, 1),
});
type Scene = typeof scene extends fc.Arbitrary<infer S> ? S : never;

function requestOf(s: Scene): TetherRequest {
  return TetherRequest.parse({
    tether: {
      diameter: s.diameter,
      length: s.slack * Math.hypot(s.depth, s.forward, s.starboard),
      netWeightPerLength: s.weight,
      tangentialDragCoefficient: s.tangential,
    },
    surroundings: { density: 1025, current: { kind: "uniform", speed: s.speed, direction: s.direction } },
    vehicle: { depth: s.depth, velocity: { forward: s.ahead } },
    given: { what: "upperEnd", upperEnd: { forward: s.forward, starboard: s.starboard } },
  });
}

const sizeOf = (solved: SolvedTether) => solved.dragBound + solved.greatestTension.tension.value;

function expectClose(found: readonly number[], expected: readonly number[], tolerance: number): void {
  for (const [i, part] of found.entries()) expect(Math.abs(part - expected[i]!)).toBeLessThan(tolerance);
}

/** Runs a law over random scenes; each must have a solution. */
function holds(law: (solved: SolvedTether, request: TetherRequest, s: Scene) => void): void {
  fc.assert(
    fc.property(scene, (s) => {
      const request = requestOf(s);
      law(solvedTether(request), request, s);
    }),
    { numRuns: 60 },
  );
}

test("end forces, drag and weight are in balance, and the arc has the length paid out", () => {
  holds((solved, { tether }) => {
    const { check, drag } = solved;
    const weight = tether.netWeightPerLength * tether.length;
    const ends = partsOf(solved.forceOnVehicle).map((part, i) => part + partsOf(solved.forceOnUpperEnd)[i]!);
    expectClose(ends, [drag.forward, drag.starboard, drag.down + weight], 1e-9 * (sizeOf(solved) + Math.abs(weight)));
    // The sums go over 40 pieces; a sharp bend inside one of them is cut short.
    expect(check.forceBalance).toBeLessThan((sizeOf(solved) + Math.abs(weight)) / 40);
    expect(check.arcLength).toSatisfy(relative(tether.length, 0.5 / 40));
    expect(solved.convergence.miss).toBeLessThan(1e-7 * tether.length);
  });
});

test("the drag of a bent tether, summed here over its chords, is what its ends carry", () => {
  const request = requestOf({
    diameter: 0.008,
    slack: 1.15,
    weight: 0.2,
    tangential: 0.01,
    speed: 0.9,
    direction: 0.5,
    depth: 40,
    forward: 10,
    starboard: -5,
    ahead: 0.4,
  });
  const { points, drag, check } = solvedTether(request);
  expect(check.forceBalance).toBeLessThan(1e-4 * Math.hypot(drag.forward, drag.starboard, drag.down));
  expect(check.arcLength).toSatisfy(relative(request.tether.length, 1e-5));
  const U = [0.9 * Math.cos(0.5) - 0.4, 0.9 * Math.sin(0.5), 0];
  const total = [0, 0, 0];
  for (const [i, p] of points.slice(1).entries()) {
    const before = points[i]!;
    const chord = [p.forward - before.forward, p.starboard - before.starboard, p.depth - before.depth];
    const length = Math.hypot(...chord);
    const t = chord.map((part) => part / length);
    const along = U.reduce((sum, part, k) => sum + part * t[k]!, 0);
    const normal = U.map((part, k) => part - along * t[k]!);
    const n = 0.5 * 1025 * 1.2 * 0.008 * Math.hypot(...normal);
    const tangential = 0.5 * 1025 * 0.01 * Math.PI * 0.008 * Math.abs(along) * along;
    for (let k = 0; k < 3; k++) total[k]! += (n * normal[k]! + tangential * t[k]!) * length;
  }
  expectClose([drag.forward, drag.starboard, drag.down], total, 0.002 * Math.hypot(...total));
});

test("seen in a mirror along the vehicle the forces are mirrored", () => {
  holds((solved, _, s) => {
    const mirrored = solvedTether(requestOf({ ...s, starboard: -s.starboard, direction: -s.direction }));
    const [x, y, z] = partsOf(mirrored.forceOnVehicle);
    expectClose([x, -y, z], partsOf(solved.forceOnVehicle), 1e-5 * sizeOf(solved));
  });
});

test("turned about the vertical with all that moves, the forces turn too", () => {
  holds((solved, _, s) => {
    const [c, n] = [Math.cos(1.1), Math.sin(1.1)];
    const still = { ...s, ahead: 0 };
    const before = solvedTether(requestOf(still));
    const [forward, starboard] = [c * s.forward - n * s.starboard, n * s.forward + c * s.starboard];
    const after = solvedTether(requestOf({ ...still, forward, starboard, direction: s.direction + 1.1 }));
    const [x, y, z] = partsOf(before.forceOnVehicle);
    expectClose(partsOf(after.forceOnVehicle), [c * x - n * y, n * x + c * y, z], 1e-5 * sizeOf(solved));
  });
});

test("without weight all forces grow with the square of the speed", () => {
  holds((_, __, s) => {
    const slow = solvedTether(requestOf({ ...s, weight: 0, ahead: 0 }));
    const fast = solvedTether(requestOf({ ...s, weight: 0, ahead: 0, speed: 3 * s.speed }));
    const expected = partsOf(slow.forceOnVehicle).map((part) => 9 * part);
    expectClose(partsOf(fast.forceOnVehicle), expected, 1e-5 * sizeOf(fast));
  });
});

test("with vehicle and upper end exchanged the forces are exchanged", () => {
  holds((solved, request, s) => {
    const other = solvedTether({
      ...request,
      vehicle: { ...request.vehicle, depth: 0 },
      given: {
        what: "upperEnd",
        upperEnd: { forward: -s.forward, starboard: -s.starboard, depth: s.depth },
      },
    });
    expectClose(partsOf(other.forceOnVehicle), partsOf(solved.forceOnUpperEnd), 1e-5 * sizeOf(solved));
  });
});

test("without weight the doubt of the forces is that of the drag per length", () => {
  const request = TetherRequest.parse({
    tether: { diameter: 0.006, length: 60, tangentialDragCoefficient: 0 },
    surroundings: {
      density: 1025,
      current: { kind: "uniform", speed: 1, direction: 0 },
      currentRelativeUncertainty: 0.1,
    },
    vehicle: { depth: 50 },
    given: { what: "upperEnd", upperEnd: { forward: 0, starboard: 0 } },
  });
  const { forward, down } = solvedTether(request).forceOnVehicle;
  // F ∝ C_n d U²: JCGM 100:2008, eq. 12.
  const share = Math.hypot(0.15, 0.02, 2 * 0.1);
  expect(forward.standardUncertainty / forward.value).toSatisfy(relative(share, 1e-3));
  expect(down.standardUncertainty / -down.value).toSatisfy(relative(share, 1e-3));
});

test("more tether never has less drag where it is straight, nor where it is pulled across with a stated force", () => {
  fc.assert(
    fc.property(between(1, 500), between(1, 2), between(1, 200), (length, more, pull) => {
      const plain = { density: 1025, diameter: 0.006, normalDragCoefficient: 1.2, speed: 1 };
      expect(tetherDragBound({ ...plain, length: more * length })).toBeGreaterThanOrEqual(
        tetherDragBound({ ...plain, length }),
      );
      const dragOf = (l: number) => pulledAcross({ pull, squareDrag: 3.69, length: l }).endForce.againstFlow;
      expect(dragOf(more * length)).toBeGreaterThanOrEqual(dragOf(length) * (1 - 1e-14));
    }),
  );
});

test("a longer tether between two ends across the flow has less tension and stays below the bound", () => {
  fc.assert(
    fc.property(between(10, 100), between(1.001, 3), between(1.01, 2), (distance, slack, more) => {
      const a = sidewaysCatenary({ length: slack * distance, distance });
      const b = sidewaysCatenary({ length: slack * more * distance, distance });
      expect(b.parameter).toBeLessThan(a.parameter);
      // Drag on both ends over R is 2 a cos φ.
      expect(2 * a.parameter * Math.cos(a.endAngle)).toBeLessThanOrEqual(slack * distance);
    }),
  );
});
