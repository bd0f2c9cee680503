import fc from "fast-check";
import { expect, test } from "vitest";
import type { BladeElementsSolved } from "../../shared/model/bladeElements.ts";
import type { BladeGeometry } from "../../shared/model/bladeGeometry.ts";
import { bladeElements, solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { checkedGeometry } from "../../shared/propeller/blade/checkedGeometry.ts";

const WATER = { density: 998.6, dynamicViscosity: 1.05e-3, kinematicViscosity: 1.05e-6, vapourPressure: 2060 };

const part = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any propeller that `checkedGeometry` passes: wild chords, pitches of either sign, camber up to the limit. */
const geometry: fc.Arbitrary<BladeGeometry> = fc
  .record({
    bladeCount: fc.integer({ min: 1, max: 7 }),
    diameter: part(0.02, 2),
    hub: part(0, 0.4),
    sections: fc.array(
      fc.record({
        chord: part(0.01, 0.5),
        pitchAngle: part(-1.2, 1.4),
        thickness: part(0.01, 0.6),
        camber: part(-0.2, 0.2),
      }),
      { minLength: 2, maxLength: 12 },
    ),
  })
  .map(({ bladeCount, diameter, hub, sections }) => ({
    bladeCount,
    diameter,
    hubDiameter: hub * diameter,
    stations: sections.map((section, i) => {
      const R = diameter / 2;
      const chord = section.chord * R;
      const along = hub + 0.02 + ((1 - hub - 0.02) * i) / (sections.length - 1);
      return {
        radius: along * R,
        chord,
        pitchAngle: section.pitchAngle,
        thickness: section.thickness * chord,
        camber: section.camber * chord,
      };
    }),
  }))
  .filter((one) => {
    try {
      return checkedGeometry(one) === one;
    } catch {
      return false;
    }
  });

const surface = fc.record({ roughness: part(0, 5e-4), liftFactor: part(0.3, 1.2), dragFactor: part(0.3, 8) });
const flow = fc.record({
  rotationRate: fc.oneof(part(0.5, 200), part(-200, -0.5)),
  advanceRatio: part(-2, 3),
});

interface Case {
  readonly geometry: BladeGeometry;
  readonly surface: { readonly roughness: number; readonly liftFactor: number; readonly dragFactor: number };
  readonly rotationRate: number;
  readonly advanceRatio: number;
}

function run(
  { geometry: shape, surface: finish, rotationRate, advanceRatio }: Case,
  fluid = WATER,
): BladeElementsSolved {
  const advanceSpeed = advanceRatio * Math.abs(rotationRate) * shape.diameter;
  const result = bladeElements({ geometry: shape, surface: finish, fluid, rotationRate, advanceSpeed });
  if (result.state === "failed") throw new Error(`${result.reason} at ${result.radius}`);
  return result;
}

const anyCase = fc
  .tuple(geometry, surface, flow)
  .map(([one, finish, how]) => ({ geometry: one, surface: finish, ...how }));

const numbersOf = (value: unknown): number[] =>
  typeof value === "number"
    ? [value]
    : value && typeof value === "object"
      ? Object.values(value).flatMap(numbersOf)
      : [];

test("any propeller has a solution of finite numbers at any advance ratio from -2 to 3, turning either way", () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      expect(numbersOf(run(one)).every(Number.isFinite)).toBe(true);
    }),
    { numRuns: 400 },
  );
});

test("what is useful, what an ideal disc needs and the losses add up to the shaft power to rounding", () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const { shaft, ...parts } = run(one).power;
      const sizes = Object.values(parts).reduce((sum, value) => sum + Math.abs(value), Math.abs(shaft));
      const sum = Object.values(parts).reduce((total, value) => total + value, 0);
      expect(Math.abs(sum - shaft)).toBeLessThan(1e-11 * sizes);
    }),
    { numRuns: 300 },
  );
});

test("no drag power is negative, and no propeller at rest needs less than the ideal disc", () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const { power } = run({ ...one, advanceRatio: 0 });
      expect(power.profile).toBeGreaterThan(0);
      expect(power.shaft).toBeGreaterThan(power.ideal);
    }),
    { numRuns: 300 },
  );
});

test("the induced velocity carries the thrust and the torque that the blades give, in every ring that momentum theory knows", () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const { elements } = run(one);
      const B = one.geometry.bladeCount;
      const V = one.advanceRatio * Math.abs(one.rotationRate) * one.geometry.diameter;
      const hub = one.geometry.hubDiameter / 2;
      for (const { radius: r, axialInduced: u, ...element } of elements) {
        const ratio = V / (V + u);
        if (!(ratio > -0.9 && ratio < 1.6)) continue;
        const sine = Math.abs(Math.sin(element.inflowAngle));
        const factor = (gap: number, over: number) =>
          over === 0 ? 1 : (2 / Math.PI) * Math.acos(Math.exp((-B * gap) / (2 * over * sine)));
        const F = factor(one.geometry.diameter / 2 - r, r) * factor(r - hub, hub);
        const stream = 4 * Math.PI * WATER.density * r * F * Math.abs(V + u);
        // The inflow angle is known to 3e-10 rad: rings that next to nothing runs through are not held to it.
        if (sine < 1e-4) continue;
        const tolerance = 1e-4 * sine * stream * Math.hypot(V, 2 * Math.PI * one.rotationRate * r);
        expect(Math.abs(B * element.thrustPerLength - stream * u)).toBeLessThan(tolerance);
        expect(Math.abs(B * element.tangentialForcePerLength - stream * element.tangentialInduced)).toBeLessThan(
          tolerance,
        );
      }
    }),
    { numRuns: 200 },
  );
});

test("coefficients follow the Reynolds number alone: another size, speed and fluid give the same", () => {
  fc.assert(
    fc.property(anyCase, part(0.2, 5), part(0.2, 5), part(1e-3, 3), (one, scale, faster, density) => {
      const large: Case = {
        ...one,
        rotationRate: one.rotationRate * faster,
        surface: { ...one.surface, roughness: one.surface.roughness * scale },
        geometry: {
          ...one.geometry,
          diameter: one.geometry.diameter * scale,
          hubDiameter: one.geometry.hubDiameter * scale,
          stations: one.geometry.stations.map((station) => ({
            radius: station.radius * scale,
            chord: station.chord * scale,
            pitchAngle: station.pitchAngle,
            thickness: station.thickness * scale,
            camber: station.camber * scale,
          })),
        },
      };
      const other = { ...WATER, density, kinematicViscosity: WATER.kinematicViscosity * scale * scale * faster };
      const [small, big] = [run(one), run(large, other)];
      const size = Math.abs(small.thrustCoefficient) + Math.abs(small.torqueCoefficient);
      expect(Math.abs(big.thrustCoefficient - small.thrustCoefficient)).toBeLessThan(1e-6 * size);
      expect(Math.abs(big.torqueCoefficient - small.torqueCoefficient)).toBeLessThan(1e-6 * size);
    }),
    { numRuns: 150 },
  );
});

test("the mirror image of a propeller, moved the other way, pushes the other way with the same torque", () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const mirrored: Case = {
        ...one,
        advanceRatio: -one.advanceRatio,
        geometry: {
          ...one.geometry,
          stations: one.geometry.stations.map((station) => ({
            ...station,
            pitchAngle: -station.pitchAngle,
            camber: -station.camber,
          })),
        },
      };
      const [here, there] = [run(one), run(mirrored)];
      const size = Math.abs(here.thrustCoefficient) + Math.abs(here.torqueCoefficient);
      expect(Math.abs(here.thrustCoefficient + there.thrustCoefficient)).toBeLessThan(1e-6 * size);
      expect(Math.abs(here.torqueCoefficient - there.torqueCoefficient)).toBeLessThan(1e-6 * size);
    }),
    { numRuns: 150 },
  );
});

test("a symmetric section that is turned backwards pushes backwards, less than forwards", () => {
  fc.assert(
    fc.property(part(0.5, 1.3), part(2, 4), (pitchRatio, blades) => {
      const one = {
        ...plainScrew(pitchRatio, Math.round(blades), 0),
        surface: CLEAN,
        rotationRate: 40,
        advanceRatio: 0,
      };
      const [ahead, astern] = [run(one), run({ ...one, rotationRate: -40 })];
      expect(astern.thrust).toBeLessThan(0);
      expect(-astern.thrust).toBeLessThan(ahead.thrust);
      expect(-astern.thrust).toBeGreaterThan(0.5 * ahead.thrust);
      expect(astern.power.shaft).toBeGreaterThan(0);
    }),
    { numRuns: 50 },
  );
});

const CLEAN = { roughness: 0, liftFactor: 1, dragFactor: 1 };

/** Slender blades of constant pitch, D 0.1 m. */
function plainScrew(pitchRatio: number, bladeCount: number, camber: number): { readonly geometry: BladeGeometry } {
  const places = [0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1];
  return {
    geometry: {
      bladeCount,
      diameter: 0.1,
      hubDiameter: 0.02,
      stations: places.map((x) => {
        const chord = 0.05 * 0.28 * Math.sqrt(1.05 - x * x);
        const pitchAngle = Math.atan(pitchRatio / (Math.PI * x));
        return { radius: 0.05 * x, chord, pitchAngle, thickness: 0.1 * chord, camber: camber * chord };
      }),
    },
  };
}

test("below the stall thrust and torque fall as the advance ratio grows", () => {
  fc.assert(
    fc.property(part(0.6, 1.2), fc.integer({ min: 2, max: 5 }), part(0, 0.05), (pitchRatio, blades, camber) => {
      const one = { ...plainScrew(pitchRatio, blades, camber), surface: CLEAN, rotationRate: 60 };
      const shares = [0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 1.05];
      const points = shares.map((share) => run({ ...one, advanceRatio: share * pitchRatio }));
      points.slice(1).forEach((point, i) => {
        expect(point.thrustCoefficient).toBeLessThan(points[i]!.thrustCoefficient);
        expect(point.torqueCoefficient).toBeLessThan(points[i]!.torqueCoefficient);
      });
    }),
    { numRuns: 60 },
  );
});

test("rougher blades push less and take more at the advance ratio of best efficiency", () => {
  fc.assert(
    fc.property(part(0.7, 1.2), part(2e-5, 2e-4), (pitchRatio, roughness) => {
      const one = { ...plainScrew(pitchRatio, 3, 0.02), rotationRate: 120, advanceRatio: 0.75 * pitchRatio };
      const [smooth, rough] = [run({ ...one, surface: CLEAN }), run({ ...one, surface: { ...CLEAN, roughness } })];
      expect(rough.thrust).toBeLessThan(smooth.thrust + 1e-9);
      expect(rough.torque).toBeGreaterThan(smooth.torque - 1e-12);
    }),
    { numRuns: 60 },
  );
});

test("with more pieces thrust and torque converge, the error falling at least fourfold as the pieces double", () => {
  const { geometry: blade } = plainScrew(1, 3, 0.02);
  const at = (count: number) => {
    const flowHere = { surface: CLEAN, fluid: WATER, rotationRate: 50, advanceSpeed: 2.5 };
    const result = solvedBlade(bladeShape(blade, count), flowHere);
    if (result.state === "failed") throw new Error(result.reason);
    return [result.thrust, result.torque] as const;
  };
  // Richardson: the last two give the limit.
  const counts = [20, 40, 80, 1280].map(at);
  for (const which of [0, 1]) {
    const limit = counts[3]![which]!;
    const [first, second, third] = counts.map((one) => Math.abs(one[which]! - limit));
    expect(second!).toBeLessThan(first! / 3.2);
    expect(third!).toBeLessThan(second! / 3.2);
    expect(first! / limit).toBeLessThan(0.004);
  }
});
