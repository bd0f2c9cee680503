import { describe, expect, test } from "vitest";
import type { BladeElementsSolved } from "../../shared/model/bladeElements.ts";
import type { BladeGeometry } from "../../shared/model/bladeGeometry.ts";
import { bracketedRoot } from "../../shared/numeric/rootFinding.ts";
import { bladeElements, solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { polarTables } from "../../shared/propeller/section/polarTables.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

const WATER = { density: 1000, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2000 };
const SMOOTH = { roughness: 0, liftFactor: 1, dragFactor: 1 };

/** Sections without drag, lift 2π α. */
const IDEAL = [-1.5, 1.5].map((angle) => ({ angle, lift: 2 * Math.PI * angle, drag: 1e-12 }));

/**
 * Blades so broad that the flow follows them: the stream behind turns like a rigid screw of their pitch, which is Betz's
 * condition for the least loss. D = 1 m, no hub, so K_T = T/1000 at 1 rev/s.
 */
function screw(bladeCount: number, pitch: number): BladeGeometry {
  const radii = Array.from({ length: 200 }, (_, i) => 0.002 + (0.498 * i) / 199);
  return {
    bladeCount,
    diameter: 1,
    hubDiameter: 0,
    stations: radii.map((radius) => {
      const chord = (40 * Math.PI * radius) / bladeCount;
      return {
        radius,
        chord,
        pitchAngle: Math.atan(pitch / (2 * Math.PI * radius)),
        thickness: 0.05 * chord,
        camber: 0,
      };
    }),
  };
}

function solved(geometry: BladeGeometry, advanceSpeed: number): BladeElementsSolved {
  const shape = bladeShape(geometry, 200);
  const tables = polarTables({ blocks: [{ points: IDEAL }] }, shape.aspectRatio);
  const result = solvedBlade(shape, { surface: SMOOTH, fluid: WATER, rotationRate: 1, advanceSpeed }, tables);
  if (result.state === "failed") throw new Error(result.reason);
  return result;
}

const loading = (result: BladeElementsSolved, J: number) => (8 * result.thrustCoefficient) / (Math.PI * J * J);

/** The screw of the pitch that is loaded to C_Th at J. */
function loadedTo(C_Th: number, J: number, bladeCount: number): BladeElementsSolved {
  const excess = (pitch: number) => loading(solved(screw(bladeCount, pitch), J), J) - C_Th;
  const { root } = bracketedRoot(excess, J, 3 * J, { relativeTolerance: 1e-7 });
  return solved(screw(bladeCount, root), J);
}

/**
 * Frictionless optimum by Theodorsen's relations from Goldstein's circulation function (Goldstein 1929; Theodorsen, Theory of
 * Propellers, 1948; Wald, Prog. Aerospace Sci. 42, 2006), computed independently of this code from the boundary-value problem
 * of the helical wake, repeatable to 1e-4; not compared digit by digit with Tibery & Wrench (1964). Infinite number of blades:
 * closed form κ = 1 - λ² ln(1 + 1/λ²). Disc: 2/(1 + sqrt(1 + C_Th)).
 */
const OPTIMUM = [
  { C_Th: 0.05, J: 0.3, two: 0.9854, three: 0.9862, four: 0.9865, infinite: 0.9874, disc: 0.9878 },
  { C_Th: 0.05, J: 0.6, two: 0.9811, three: 0.9831, four: 0.984, infinite: 0.9863, disc: 0.9878 },
  { C_Th: 0.05, J: 0.9, two: 0.9749, three: 0.9788, four: 0.9805, infinite: 0.9847, disc: 0.9878 },
  { C_Th: 0.1, J: 0.3, two: 0.9719, three: 0.9732, four: 0.9739, infinite: 0.9756, disc: 0.9762 },
  { C_Th: 0.1, J: 0.6, two: 0.9635, three: 0.9673, four: 0.9691, infinite: 0.9734, disc: 0.9762 },
  { C_Th: 0.1, J: 0.9, two: 0.9514, three: 0.9588, four: 0.9622, infinite: 0.9704, disc: 0.9762 },
  { C_Th: 0.25, J: 0.3, two: 0.9357, three: 0.9388, four: 0.9403, infinite: 0.9443, disc: 0.9443 },
  { C_Th: 0.25, J: 0.6, two: 0.9161, three: 0.9251, four: 0.9291, infinite: 0.9391, disc: 0.9443 },
  { C_Th: 0.25, J: 0.9, two: 0.8872, three: 0.9049, four: 0.9129, infinite: 0.932, disc: 0.9443 },
];

describe.each(OPTIMUM)(
  "a frictionless rigid-screw wake at C_Th $C_Th, J $J",
  ({ C_Th, J, two, three, four, infinite, disc }) => {
    // The printed optimum leaves out the contraction of the stream, which costs up to 0.0035 at C_Th 0.25.
    const contraction = 0.014 * C_Th;

    test("with very many blades has the efficiency of the closed form, and less than the disc", () => {
      const { efficiency } = loadedTo(C_Th, J, 400);
      expect(efficiency).toBeGreaterThan(infinite - 0.0008 - contraction);
      expect(efficiency).toBeLessThan(infinite + 0.0005);
      expect(efficiency).toBeLessThan(disc);
    });

    // Prandtl's factor lets few blades at high J lose too little; the printed mass coefficients say so as well.
    test.each([
      { blades: 2, printed: two, tooGood: J < 0.5 ? 0.001 : J < 0.8 ? 0.003 : 0.012 },
      { blades: 3, printed: three, tooGood: 0.004 },
      { blades: 4, printed: four, tooGood: 0.002 },
    ])("with $blades blades has the Goldstein optimum $printed", ({ blades, printed, tooGood }) => {
      const { efficiency } = loadedTo(C_Th, J, blades);
      expect(efficiency).toBeGreaterThan(printed - 0.001 - contraction);
      expect(efficiency).toBeLessThan(printed + tooGood);
    });
  },
);

test("without drag, with many blades and little swirl, a ring at rest has the thrust and velocity of momentum theory", () => {
  // Rankine-Froude per ring: dT = 4π ρ r v² dr, exact where F = 1.
  const { elements } = solved(screw(400, 0.05), 0);
  for (const { radius, thrustPerLength, axialInduced: v } of elements.filter(
    (one) => one.radius > 0.1 && one.radius < 0.45,
  )) {
    expect((400 * thrustPerLength) / (4 * Math.PI * 1000 * radius * v * v)).toBeCloseTo(1, 3);
  }
});

test("without drag and with many blades a lightly loaded ring sheds the swirl that its torque needs", () => {
  // Angular momentum: dQ = 4π ρ r² (V + u) v dr; Glauert, Airplane Propellers (1935). Slip of a twentieth of the pitch.
  const { elements } = solved(screw(400, 0.63), 0.6);
  for (const one of elements.filter(({ radius }) => radius > 0.1 && radius < 0.45)) {
    const carried = 4 * Math.PI * 1000 * one.radius * (0.6 + one.axialInduced) * one.tangentialInduced;
    expect((400 * one.tangentialForcePerLength) / carried).toBeCloseTo(1, 3);
  }
});

/**
 * Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975), polynomials evaluated independently, Re 2e6. A
 * coarse check, far above the Reynolds numbers the section model was set at: blade elements know no cascade, and of the
 * curved flow of broad blades only what their aspect ratio tells. What they miss is in tests/reference/bladesOfSeries.test.ts.
 */
test.each([
  { blades: 4, areaRatio: 0.7, pitchRatio: 0.6, J: 0, K_T: 0.25, K_Q: 0.02481, within: 0.2 },
  { blades: 4, areaRatio: 0.7, pitchRatio: 1, J: 0, K_T: 0.4547, K_Q: 0.06754, within: 0.15 },
  { blades: 4, areaRatio: 0.7, pitchRatio: 1, J: 0.4, K_T: 0.3142, K_Q: 0.04921, within: 0.18 },
  { blades: 4, areaRatio: 0.7, pitchRatio: 1.4, J: 0, K_T: 0.6244, K_Q: 0.12827, within: 0.25 },
  { blades: 4, areaRatio: 0.7, pitchRatio: 1.4, J: 0.6, K_T: 0.4206, K_Q: 0.08947, within: 0.18 },
  { blades: 3, areaRatio: 0.5, pitchRatio: 0.6, J: 0, K_T: 0.2334, K_Q: 0.02271, within: 0.2 },
  { blades: 3, areaRatio: 0.5, pitchRatio: 1, J: 0, K_T: 0.4057, K_Q: 0.05964, within: 0.18 },
  { blades: 3, areaRatio: 0.5, pitchRatio: 1, J: 0.6, K_T: 0.2057, K_Q: 0.0334, within: 0.18 },
])(
  "B$blades-$areaRatio, P/D $pitchRatio, J $J: thrust and torque within $within of the series",
  ({ blades, areaRatio, pitchRatio, J, K_T, K_Q, within }) => {
    const series = { family: "wageningen-b", blades, areaRatio, pitchRatio } as const;
    const geometry = seriesGeometry({ series, diameter: 0.25, outsideRange: false });
    const result = bladeElements({ geometry, surface: SMOOTH, fluid: WATER, rotationRate: 60, advanceSpeed: J * 15 });
    if (result.state === "failed") throw new Error(result.reason);
    expect(Math.abs(result.thrustCoefficient / K_T - 1)).toBeLessThan(within);
    expect(Math.abs(result.torqueCoefficient / K_Q - 1)).toBeLessThan(within);
  },
);

/**
 * The same rings solved apart from this code, by another method: u and v of each ring as two unknowns of thrust and torque
 * = change of momentum (Glauert, Airplane Propellers, 1935; Prandtl's tip and hub factor), `scipy.optimize.fsolve` (scipy
 * 1.17.1, numpy 2.4.6, Python 3.11). Three blades, D 0.2 m, hub 0.04 m, even chord 20 mm, P/D 1 at all radii, lift 2π α
 * times k = (AR + 2)/(2 + sqrt(AR² + 4)) of AR 4, drag 0.01, 15 rev/s, 30 pieces of equal steps of the angle.
 */
test.each([
  { J: 0, K_T: 0.2575100564, K_Q: 0.0209603234 },
  { J: 0.2, K_T: 0.219070008, K_Q: 0.0208343233 },
  { J: 0.4, K_T: 0.1738078811, K_Q: 0.0193663469 },
  { J: 0.6, K_T: 0.1217677416, K_Q: 0.0159497864 },
  { J: 0.8, K_T: 0.0632706869, K_Q: 0.009998030498 },
])("at J $J thrust and torque are those of the rings solved in two unknowns", ({ J, K_T, K_Q }) => {
  const D = 0.2;
  const stations = Array.from({ length: 161 }, (_, i) => {
    const radius = 0.02 + 0.0005 * i;
    const pitchAngle = Math.atan(D / (2 * Math.PI * radius));
    return { radius, chord: 0.02, pitchAngle, thickness: 0.002, camber: 0 };
  });
  const points = [-1.5, 1.5].map((angle) => ({ angle, lift: 2 * Math.PI * angle, drag: 0.01 }));
  const result = bladeElements({
    geometry: { bladeCount: 3, diameter: D, hubDiameter: 0.04, stations },
    ...{ surface: SMOOTH, fluid: WATER, polars: { blocks: [{ points }] } },
    ...{ rotationRate: 15, advanceSpeed: J * 15 * D },
  });
  if (result.state === "failed") throw new Error(result.reason);
  expect(Math.abs(result.thrustCoefficient / K_T - 1)).toBeLessThan(1e-8);
  expect(Math.abs(result.torqueCoefficient / K_Q - 1)).toBeLessThan(1e-8);
});
