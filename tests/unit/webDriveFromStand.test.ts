import { expect, test } from "vitest";
import type { OperatingPoint } from "../../shared/model/drive.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import type { Driven, DrivenPropeller } from "../../web/views/drive/driveModel.ts";
import { leftOutText, type OnStand } from "../../web/views/drive/fromStand.ts";

const WATER: FluidState = { kind: "fresh", temperature: 293.15 };
const AIR: FluidState = { kind: "air", temperature: 288.15, pressure: 101325, humidity: 0 };

const PART = {
  name: "made up",
  diameter: 0.1,
  diameterUncertainty: 0,
  nozzle: false,
} as OnStand["subject"]["propeller"];
const BLADES = { ...PART, bladeCount: 3, chordAt07: 0.02, pitchRatio: 0.8 };

function drivenAt(rotationRate: number): Driven {
  const propeller = {
    name: "sanded",
    thrustCoefficient: uncertain(0.25, 0.002),
    torqueCoefficient: uncertain(0.03, 0.0005),
  } as DrivenPropeller;
  return { propeller, sweep: [], point: { rotationRate } as OperatingPoint, problem: "" };
}

const onStand = (fluid: FluidState, propeller = BLADES): OnStand => ({ subject: { propeller, topRate: 50 }, fluid });

test("in the water and at the rate of the stand nothing is left out: the factors are 1", () => {
  const text = leftOutText(drivenAt(50), onStand(WATER), WATER);
  expect(text).toMatch(/thrust × 1\.000 and torque × 1\.000\.$/);
});

// By hand: c 20 mm, 0.75 π n D = 11.78 m/s; ν of water of 20 °C 1.004e-6 m²/s (IAPWS), of air of 15 °C 1.461e-5 m²/s
// (International Standard Atmosphere, ISO 2533:1975): Re 2.3e5 and 1.6e4.
test("from air to water the blade Reynolds numbers are named, thrust rises and torque falls", () => {
  const text = leftOutText(drivenAt(50), onStand(AIR), WATER);
  expect(text).toMatch(/Reynolds number is 2.3e5 here and was at most 1.6e4 on the stand/);
  const [thrust, torque] = [/thrust × ([\d.]+)/, /torque × ([\d.]+)/].map((pattern) => Number(pattern.exec(text)?.[1]));
  expect(thrust).toBeGreaterThan(1);
  expect(torque).toBeLessThan(1);
});

// By hand: chord of this B3-50 at 0.75 R 2.15 · 0.5 D/3 = 0.0358 m, between K_r of 2.168 at 0.7 R and 2.127 at 0.8 R (Oosterveld &
// van Oossanen 1975, table 1), and 11.78 m/s: Re 4.2e5.
test("from the shape of the blades the Reynolds number is known as well", () => {
  const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 } as const;
  const geometry = seriesGeometry({ series, diameter: 0.1, outsideRange: false });
  const text = leftOutText(drivenAt(25), onStand(WATER, { ...PART, geometry } as typeof BLADES), WATER);
  expect(text).toMatch(/Reynolds number is 2.1e5 here and was at most 4.2e5 on the stand/);
});

test("without chord and pitch it says so and still gives a size", () => {
  const text = leftOutText(drivenAt(80), onStand(WATER, PART as typeof BLADES), WATER);
  expect(text).toContain("chord and pitch are not stated");
  expect(text).toMatch(/thrust × 1\.0\d+ ± 0\.0\d+/);
});

test("a propeller at rest has no Reynolds number, and nothing is said", () => {
  expect(leftOutText(drivenAt(0), onStand(WATER), WATER)).toBe("");
});
