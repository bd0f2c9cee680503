import { expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { bladeElements } from "../../shared/propeller/blade/bladeElements.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

/**
 * The same propeller by blade elements from its sections and by the polynomials of its tests (Oosterveld & van
 * Oossanen, International Shipbuilding Progress 22 (1975) 251, tables 1 and 5), at a Reynolds number near that of the
 * series.
 *
 * Blade elements take each section as if it stood in straight flow. On wide blades the flow is curved by the blade
 * itself, which takes away about half of the camber (Ludwieg & Ginzel 1944, lifting-surface corrections, from memory),
 * so that they give more thrust than was measured. At rest the real section loses suction on its nose, which the section
 * model knows too little of: the torque of high pitch comes out up to a quarter low.
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
