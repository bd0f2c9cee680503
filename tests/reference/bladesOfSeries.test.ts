import { expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { bladeElements } from "../../shared/propeller/blade/bladeElements.ts";
import { BROAD_BLADE_MISSES } from "../../shared/propeller/blade/broadBlades.data.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

/**
 * The same propeller by blade elements from its sections and by the polynomials of its tests (Oosterveld & van
 * Oossanen, International Shipbuilding Progress 22 (1975) 251, tables 1 and 5), at a Reynolds number near that of the
 * series.
 *
 * Wide blades curve the flow, which takes away part of the camber (Ludwieg & Ginzel 1944, lifting-surface corrections,
 * from memory); the section model allows for it by the aspect ratio of the blade alone, and too little. At rest the real
 * section loses suction on its nose, which the section model knows too little of: the torque of high pitch comes out up to
 * 30 % low.
 */
const SCREWS = [
  { blades: 2, areaRatio: 0.3, pitchRatio: 0.8 },
  { blades: 3, areaRatio: 0.5, pitchRatio: 0.8 },
  { blades: 3, areaRatio: 0.5, pitchRatio: 1.2 },
  { blades: 4, areaRatio: 0.7, pitchRatio: 1 },
] as const;

test.each(SCREWS)(
  "B$blades-$areaRatio of pitch ratio $pitchRatio by blade elements pushes up to a third more than in its tests, never less than 0.9 of it",
  (screw) => {
    const series = { family: "wageningen-b", ...screw } as const;
    const [diameter, rotationRate] = [0.25, 15];
    const geometry = seriesGeometry({ series, diameter, outsideRange: false });
    for (const J of [0, 0.3]) {
      const solved = bladeElements({
        geometry,
        surface: { roughness: 0, liftFactor: 1, dragFactor: 1 },
        fluid: fluidProperties({ kind: "fresh", temperature: 288.15 }),
        rotationRate,
        advanceSpeed: J * rotationRate * diameter,
      });
      if (solved.state === "failed") throw new Error(solved.reason);
      const tested = openWaterOfSeries({ series, advanceRatio: J });
      const thrust = solved.thrustCoefficient / tested.thrustCoefficient;
      expect(thrust).toBeGreaterThan(0.9);
      expect(thrust).toBeLessThan(1.33);
      const torque = solved.torqueCoefficient / tested.torqueCoefficient;
      expect(torque).toBeGreaterThan(0.75);
      expect(torque).toBeLessThan(1.35);
    }
  },
);

/** Area ratios that were tested: van Lammeren, van Manen & Oosterveld, SNAME Transactions 77 (1969); Carlton, table 6.4. */
const TESTED: readonly (readonly [blades: number, areas: readonly number[]])[] = [
  [2, [0.3]],
  [3, [0.35, 0.5, 0.65, 0.8]],
  [4, [0.4, 0.55, 0.7, 0.85, 1]],
  [5, [0.45, 0.6, 0.75, 1.05]],
  [6, [0.5, 0.65, 0.8]],
  [7, [0.55, 0.7, 0.85]],
];

test.each(BROAD_BLADE_MISSES)(
  "at rest the tested screws of pitch ratio $pitchRatio miss their tests by what is told with broad blades, no more and no less",
  ({ pitchRatio, thrust, torque }) => {
    const screws = TESTED.flatMap(([blades, areas]) => areas.map((areaRatio) => ({ blades, areaRatio })));
    const misses = screws.map((screw) => {
      const series = { family: "wageningen-b", ...screw, pitchRatio } as const;
      const solved = bladeElements({
        geometry: seriesGeometry({ series, diameter: 0.25, outsideRange: false }),
        surface: { roughness: 0, liftFactor: 1, dragFactor: 1 },
        fluid: { density: 1000, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2000 },
        rotationRate: 40,
        advanceSpeed: 0,
      });
      if (solved.state === "failed") throw new Error(solved.reason);
      const tested = openWaterOfSeries({ series, advanceRatio: 0 });
      return [
        solved.thrustCoefficient / tested.thrustCoefficient - 1,
        solved.torqueCoefficient / tested.torqueCoefficient - 1,
      ] as const;
    });
    for (const [of, [low, high]] of [thrust, torque].entries()) {
      const found = misses.map((miss) => miss[of]!);
      expect(Math.abs(Math.min(...found) - low)).toBeLessThan(0.006);
      expect(Math.abs(Math.max(...found) - high)).toBeLessThan(0.006);
    }
  },
);
