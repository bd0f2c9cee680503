import { describe, expect, test } from "vitest";
import { acrossLayers } from "../../shared/propeller/strength/allowableStress.ts";
import { type BladeLoad, bladeStrength } from "../../shared/propeller/strength/bladeStrength.ts";
import { sectionProperties } from "../../shared/propeller/strength/sectionProperties.ts";
import { relative } from "../relative.ts";
import { BAR, evenPieces, PRINT } from "../unit/bladeBeam.ts";

const BREADTH = 0.02;
const DEPTH = 0.004;
const LENGTH = 0.08;
/** I = b h³/12 of a rectangle. */
const I = (BREADTH * DEPTH ** 3) / 12;
const MODULUS = 2e9;

/**
 * J. M. Gere & S. P. Timoshenko, Mechanics of Materials, 4th ed. (1997), appendix G, table G-1, cantilever beams: case 1
 * uniform load q, case 4 load P at distance a, case 8 triangular load q at the root; from memory.
 */
const q = 50;
const P = 3;
const a = 0.05;
const CANTILEVERS = [
  {
    name: "even load",
    loads: evenPieces(400, () => q),
    moment: (q * LENGTH ** 2) / 2,
    tip: (q * LENGTH ** 4) / (8 * MODULUS * I),
  },
  {
    name: "load falling to nothing at the tip",
    loads: evenPieces(400, (s) => q * (1 - s)),
    moment: (q * LENGTH ** 2) / 6,
    tip: (q * LENGTH ** 4) / (30 * MODULUS * I),
  },
  {
    name: "one force",
    loads: [{ radius: BAR.hubDiameter / 2 + a, width: 1e-6, thrustPerLength: P / 1e-6, tangentialForcePerLength: 0 }],
    moment: P * a,
    tip: (P * a * a * (3 * LENGTH - a)) / (6 * MODULUS * I),
  },
] as const;

describe("a flat bar is the cantilever of the handbook", () => {
  test.each(CANTILEVERS)("$name: moment at the root, stress and deflection", ({ loads, moment, tip }) => {
    const result = bladeStrength({ ...PRINT, geometry: BAR, elements: loads, rotationRate: 0 });
    const root = result.sections[0]!;
    expect(root.flatwiseMoment).toSatisfy(relative(moment, 1e-5));
    // Flexure formula, σ = 6 M / (b h²) of a rectangle; Gere & Timoshenko, ch. 5.
    expect(root.greatestTension).toSatisfy(relative((6 * moment) / (BREADTH * DEPTH ** 2), 1e-5));
    // Curvature between 41 sections is taken as a straight line, and none beyond 0.95 of the radius.
    expect(result.tipDeflection.axial).toSatisfy(relative(tip, 2e-3));
    expect(result.tipDeflection.tangential).toBe(0);
  });
});

test("a turning bar is pulled by ρ ω² (R² - r²)/2 at every radius", () => {
  // Elementary statics of a rotating rod, from memory; e.g. any text on dynamics of machinery.
  const rotationRate = 50;
  const omega = 2 * Math.PI * rotationRate;
  const elements = evenPieces(10, () => 0);
  const { sections } = bladeStrength({ ...PRINT, geometry: BAR, elements, rotationRate });
  for (const { radius, centrifugalStress, greatestTension } of sections) {
    const stress = (PRINT.material.density * omega ** 2 * ((BAR.diameter / 2) ** 2 - radius ** 2)) / 2;
    expect(centrifugalStress).toSatisfy(relative(stress, 1e-9));
    expect(greatestTension).toSatisfy(relative(stress, 1e-9));
  }
});

test("centrifugal pull on a raked bar bends it by the pull times its offset", () => {
  // M = ∫ ρ A ω² r tan θ (r - r0) dr = ρ A ω² tan θ [r³/3 - r0 r²/2], by hand.
  const [rotationRate, rakeAngle] = [50, 0.1];
  const request = { ...PRINT, geometry: BAR, elements: evenPieces(400, () => 0), rotationRate, rakeAngle };
  const [r0, R] = [BAR.hubDiameter / 2, BAR.diameter / 2];
  const whole = (r: number) => r ** 3 / 3 - (r0 * r * r) / 2;
  const pull = PRINT.material.density * BREADTH * DEPTH * (2 * Math.PI * rotationRate) ** 2;
  const moment = pull * Math.tan(rakeAngle) * (whole(R) - whole(r0));
  // Rake aft bends the way thrust does.
  expect(bladeStrength(request).sections[0]!.flatwiseMoment).toSatisfy(relative(moment, 1e-4));
});

/**
 * Chord 40 mm, thickness 4 mm, camber 2 mm. scipy 1.17.1, quad over the chord of t, t y_c, (y_upper³ - y_lower³)/3 and
 * t x², for half-thickness (t/2) g(u) on the camber line f (1 - u²), u = 2x/c.
 */
const SECTIONS = [
  { shape: "parabolic", area: 1.066667e-4, centroid: 1.6e-3, flatwise: 1.170286e-10, edgewise: 8.533333e-9 },
  { shape: "ellipse", area: 1.256637e-4, centroid: 1.5e-3, flatwise: 1.570796e-10, edgewise: 1.25676e-8 },
  { shape: "plate", area: 1.6e-4, centroid: 1.333333e-3, flatwise: 2.702222e-10, edgewise: 2.133333e-8 },
] as const;

describe("properties of a cambered section", () => {
  test.each(SECTIONS)("$shape agrees with numerical integration over its outline", (expected) => {
    const found = sectionProperties({ shape: expected.shape, chord: 0.04, thickness: 0.004, camber: 0.002 });
    expect(found.area).toSatisfy(relative(expected.area, 1e-6));
    expect(found.secondMomentFlatwise).toSatisfy(relative(expected.flatwise, 1e-6));
    // scipy stops at 1e-4 at the blunt ends of the ellipse: π/64 c³ t is 1.256637e-8.
    expect(found.secondMomentEdgewise).toSatisfy(relative(expected.edgewise, 2e-4));
    const back = Math.max(...found.outline.map(({ towardsBack }) => towardsBack));
    expect(back).toBeCloseTo(0.002 + 0.002 - expected.centroid, 8);
  });

  test("an ellipse without camber has π/4 c t and π/64 c t³", () => {
    // Gere & Timoshenko, Mechanics of Materials (1997), appendix D, case 16 (semi-axes): A = π a b, I = π a b³/4; from memory.
    const [semiChord, semiThickness] = [0.02, 0.002];
    const found = sectionProperties({ shape: "ellipse", chord: 0.04, thickness: 0.004, camber: 0 });
    expect(found.area).toSatisfy(relative(Math.PI * semiChord * semiThickness, 1e-12));
    expect(found.secondMomentFlatwise).toSatisfy(relative((Math.PI * semiChord * semiThickness ** 3) / 4, 1e-12));
    expect(found.secondMomentEdgewise).toSatisfy(relative((Math.PI * semiThickness * semiChord ** 3) / 4, 1e-12));
  });

  test("a flat-faced segment has 8/175 c t³", () => {
    // Parabolic segment of height t on chord c: I about its centroid 8/175 c t³, A = 2/3 c t; handbook value, from memory
    // (Gere & Timoshenko, appendix D, gives the parabolic spandrel and semisegment it follows from).
    const found = sectionProperties({ shape: "parabolic", chord: 0.04, thickness: 0.004, camber: 0.002 });
    expect(found.secondMomentFlatwise).toSatisfy(relative((8 / 175) * 0.04 * 0.004 ** 3, 1e-12));
  });
});

/**
 * A tapered twisted blade: D 100 mm, hub 20 mm, chord 30 to 15 mm, thickness 12 to 6 % of it, constant pitch 80 mm, lens
 * sections, thrust 400 sin(πs) N/m and tangential force 250 sin(πs) N/m, s from hub to tip,
 * 60 rev/s, 1240 kg/m³, E 3 GPa. scipy 1.17.1, quad(epsrel=1e-12) of (x - r) T, (x - r) Q and ρ A ω² x; moments turned by
 * the pitch angle; σ = F/A - M_f y/I_f - M_e x/I_e at 200,001 points of the back and the face; tip deflection by
 * trapezoid of κ (R - r) at 800 stations.
 */
const TAPERED_ROOT = {
  radius: 0.01,
  pull: 5.678184,
  flat: 2.259628e-1,
  edge: -8.156815e-2,
  tension: 7.711525e6,
  compression: 7.553798e6,
};

describe("a tapered twisted blade agrees with an independent calculation", () => {
  const [hub, tip] = [0.01, 0.05];
  const along = (s: number) => hub + (tip - hub) * s;
  const stations = Array.from({ length: 17 }, (_, i) => {
    const s = i / 16;
    const radius = along(s);
    const pitchAngle = Math.atan(0.08 / (2 * Math.PI * radius));
    const chord = 0.03 - 0.015 * s;
    return { radius, chord, thickness: chord * (0.12 - 0.06 * s), camber: 0, pitchAngle };
  });
  const geometry = { bladeCount: 3, diameter: 2 * tip, hubDiameter: 2 * hub, stations };
  const pieces = 500;
  const elements: BladeLoad[] = Array.from({ length: pieces }, (_, i) => {
    const s = (i + 0.5) / pieces;
    const shape = Math.sin(Math.PI * s);
    const width = (tip - hub) / pieces;
    return { radius: along(s), width, thrustPerLength: 400 * shape, tangentialForcePerLength: 250 * shape };
  });
  const material = { ...PRINT.material, modulusInLayer: 3e9 };
  const result = bladeStrength({
    ...PRINT,
    material,
    sectionShape: "parabolic",
    geometry,
    elements,
    rotationRate: 60,
  });

  test("forces, moments and stresses at the root", () => {
    const expected = TAPERED_ROOT;
    const found = result.sections[0]!;
    expect(found.radius).toBeCloseTo(expected.radius, 12);
    expect(found.centrifugalForce).toSatisfy(relative(expected.pull, 1e-5));
    expect(found.flatwiseMoment).toSatisfy(relative(expected.flat, 1e-4));
    expect(found.edgewiseMoment).toSatisfy(relative(expected.edge, 1e-4));
    // Forty steps of the outline against 200,000.
    expect(found.greatestTension).toSatisfy(relative(expected.tension, 1e-3));
    expect(found.greatestCompression).toSatisfy(relative(expected.compression, 1e-3));
  });

  test("the greatest stress is 8.499 MPa near 17 mm", () => {
    expect(result.critical.radius).toBeGreaterThan(0.0155);
    expect(result.critical.radius).toBeLessThan(0.019);
    expect(result.critical.greatestTension).toSatisfy(relative(8.498933e6, 1e-3));
  });

  test("the tip bends 1.173 mm forward and 0.728 mm against the turning", () => {
    // Curvature as straight lines between 41 sections.
    expect(result.tipDeflection.axial).toSatisfy(relative(1.17293e-3, 5e-3));
    expect(result.tipDeflection.tangential).toSatisfy(relative(7.28417e-4, 5e-3));
  });
});

test("at half a right angle the property across layers is the harmonic mean", () => {
  // Hankinson's formula at 45°: 2 P Q/(P + Q); Air Service Information Circular 259 (1921), from memory.
  expect(acrossLayers(40e6, 20e6, Math.PI / 4)).toSatisfy(relative(26.6666667e6, 1e-8));
});
