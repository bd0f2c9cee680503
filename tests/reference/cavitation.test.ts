import { describe, expect, test } from "vitest";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { BURRILL_LINES } from "../../shared/propeller/cavitation/burrill.data.ts";
import { burrillCavitationNumber, burrillLoading } from "../../shared/propeller/cavitation/burrill.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { kellerAreaRatio } from "../../shared/propeller/cavitation/keller.ts";
import { thrustRatioNearSurface, ventilation } from "../../shared/propeller/cavitation/ventilation.ts";
import { relativeError } from "../relative.ts";

/** The lines of Molland, Turnock & Hudson and of Blount & Fox, from memory, worked out in Python 3.11 and rounded. */
const LOADINGS: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  light: [
    [0.1, 0.0576],
    [0.2, 0.0904],
    [0.5, 0.1469],
    [1, 0.2061],
  ],
  merchant: [
    [0.1, 0.0615],
    [0.2, 0.102],
    [0.5, 0.1821],
    [1, 0.2752],
  ],
  fast: [
    [0.1, 0.0716],
    [0.2, 0.1273],
    [0.5, 0.2554],
    [1, 0.4239],
  ],
  segmental: [
    [0.1, 0.0651],
    [0.2, 0.1198],
    [0.5, 0.2684],
    [1, 0.494],
  ],
  breakdown: [
    [0.1, 0.12],
    [0.5, 0.6],
    [1, 1.2],
  ],
};

test.each(BURRILL_LINES)(
  "the line $line has the loadings of its formula, and gives back its cavitation number",
  (line) => {
    for (const [sigma, loading] of LOADINGS[line.line]!) {
      const found = burrillLoading(line, sigma)!;
      expect(Math.abs(found - loading)).toBeLessThan(0.000051);
      expect(relativeError(burrillCavitationNumber(line, found)!, sigma)).toBeLessThan(1e-12);
    }
  },
);

// tau_c = 0.3 sqrt(sigma) - 0.03 is a common shortcut for the merchant line, within 0.02 up to sigma 0.7; from memory.
test("the merchant line lies within 0.02 of the common shortcut", () => {
  const merchant = BURRILL_LINES.find(({ line }) => line === "merchant")!;
  for (const sigma of [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]) {
    expect(Math.abs(burrillLoading(merchant, sigma)! - (0.3 * Math.sqrt(sigma) - 0.03))).toBeLessThan(0.02);
  }
});

// Holtrop & Mennen, An approximate power prediction method, International Shipbuilding Progress 29 (1982) 166, worked
// example: thrust 2172.75 kN, D 8 m, Z 4, shaft 5.8 m deep, p_atm - p_v 99047 N/m², 1025 kg/m³, k 0.2: A_E/A_0 0.7393.
// Printed value from memory.
test("Keller's rule gives the area of Holtrop & Mennen's example", () => {
  const pressureOverVapour = 99047 + 1025 * 9.81 * 5.8;
  const found = kellerAreaRatio({ thrust: 2172750, blades: 4, diameter: 8, pressureOverVapour, allowance: 0.2 });
  expect(Math.abs(found - 0.7393)).toBeLessThan(0.00006);
});

describe("a small propeller at 4500 rpm", () => {
  // B3-60 of 100 mm, P/D 1.0, shaft 0.5 m deep in fresh water of 15 °C (999.1 kg/m³, p_v 1705 Pa), worked out apart
  // from the project in Python 3.11 from the definitions of Burrill & Emerson 1963 and the lines above.
  const result = cavitation(
    CavitationRequest.parse({
      thrust: 241.6,
      rotationRate: 75,
      diameter: 0.1,
      blades: 3,
      areaRatio: 0.6,
      pitchRatio: 1,
      shaftImmersion: 0.5,
      fluid: { kind: "fresh", temperature: 288.15 },
    }),
  );

  test("has the section speed, cavitation number, area and loading of the definitions", () => {
    expect(Math.abs(result.sectionSpeed - 16.493)).toBeLessThan(0.0006);
    expect(Math.abs(result.cavitationNumber - 0.7691)).toBeLessThan(0.0001);
    expect(Math.abs(result.projectedArea - 39.49e-4)).toBeLessThan(0.006e-4);
    expect(Math.abs(result.loading - 0.4503)).toBeLessThan(0.0002);
  });

  test("stands above the lines for light and heavy ships, so that it cavitates", () => {
    const limits = Object.fromEntries(result.lines.map(({ line, limit }) => [line, limit!]));
    expect(Math.abs(limits["light"]! - 0.1816)).toBeLessThan(0.0001);
    expect(Math.abs(limits["merchant"]! - 0.2357)).toBeLessThan(0.0001);
    expect(Math.abs(limits["fast"]! - 0.3503)).toBeLessThan(0.0001);
    expect(Math.abs(limits["segmental"]! - 0.3921)).toBeLessThan(0.0001);
    expect(result.lines.map(({ state }) => state)).toEqual(["above", "above", "above", "above", "below"]);
    expect(result.answer).toContain("It cavitates: more than about 10 to 15 % of the back cavitates.");
  });

  test("needs the area of Keller's rule", () => {
    for (const [i, area] of [0.509, 0.609, 0.709].entries()) {
      expect(Math.abs(result.leastAreas[i]!.areaRatio - area)).toBeLessThan(0.0006);
    }
    expect(result.leastAreas.map(({ isMet }) => isMet)).toEqual([true, false, false]);
  });
});

describe("the surface", () => {
  // β = 1 - 0.675 (1 - 0.769 h/R)^1.258: Minsaas, Faltinsen & Persson 1983, from memory; by hand 1 - 0.675 ·
  // 0.231^1.258 at h = R.
  test.each([
    { immersion: 0, ratio: 0.325 },
    { immersion: 1, ratio: 1 - 0.675 * 0.231 ** 1.258 },
    { immersion: 1.31, ratio: 1 },
    { immersion: 3, ratio: 1 },
  ])("$immersion tip radii deep, $ratio of the deep-water thrust is left", ({ immersion, ratio }) => {
    expect(thrustRatioNearSurface(immersion)).toBeCloseTo(ratio, 12);
  });

  // Bollard, 25 N on 76 mm in 998.6 kg/m³: v = sqrt(T/(2 ρ A)) = 1.66109 m/s by hand; v²/(2 g) = 0.140683 m; HI 9.8: D
  // (1 + 2.3 v/sqrt(g D)).
  test("the mean flow at bollard can pull the surface down by its velocity head", () => {
    const air = ventilation({
      thrust: 25,
      nozzleThrust: 0,
      diameter: 0.076,
      advanceSpeed: 0,
      density: 998.6,
      shaftImmersion: 0.1,
    });
    const v = Math.sqrt(25 / (2 * 998.6 * (Math.PI / 4) * 0.076 ** 2));
    expect(relativeError(air.drawdown, v ** 2 / (2 * 9.80665))).toBeLessThan(1e-12);
    expect(relativeError(air.depthAgainstVortices, 0.076 * (1 + (2.3 * v) / Math.sqrt(9.80665 * 0.076)))).toBeLessThan(
      1e-12,
    );
    expect(air.verdict).toBe("likely");
  });
});
