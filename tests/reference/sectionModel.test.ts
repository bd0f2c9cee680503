import { describe, expect, test } from "vitest";
import { monotoneCubic } from "../../shared/numeric/monotoneCubic.ts";
import { broadBlade } from "../../shared/propeller/section/broadBlade.ts";
import { ModelledLaw } from "../../shared/propeller/section/modelledLaw.ts";
import { sectionDrag } from "../../shared/propeller/section/sectionDrag.ts";
import { viternaDrag, viternaLift, viternaOf } from "../../shared/propeller/section/viterna.ts";

const degrees = (angle: number) => (angle * Math.PI) / 180;

/**
 * Viterna & Corrigan, Fixed pitch rotor performance of large horizontal axis wind turbines, NASA CP-2230 (1982): the formulas
 * evaluated independently for a stall at 12° with C_L 1.0, C_D 0.08 and aspect ratio 10, to four decimals.
 */
const STALLED = viternaOf({ angle: degrees(12), lift: 1, drag: 0.08 }, 10);
test.each([
  { angle: 12, lift: 1, drag: 0.08 },
  { angle: 15, lift: 0.9003, drag: 0.1103 },
  { angle: 20, lift: 0.8284, drag: 0.1742 },
  { angle: 30, lift: 0.799, drag: 0.344 },
  { angle: 45, lift: 0.7583, drag: 0.6625 },
  { angle: 60, lift: 0.6049, drag: 0.9799 },
  { angle: 75, lift: 0.3336, drag: 1.21 },
  { angle: 90, lift: 0, drag: 1.29 },
])("past stall, at $angle°, lift is $lift and drag $drag", ({ angle, lift, drag }) => {
  expect(Math.abs(viternaLift(STALLED, degrees(angle)) - lift)).toBeLessThan(6e-5);
  expect(Math.abs(viternaDrag(STALLED, degrees(angle)) - drag)).toBeLessThan(6e-5);
});

describe("profile drag", () => {
  const blade = { thicknessRatio: 0.035235, chord: 3.065, roughness: 30e-6 };

  test("of a rough ship blade is that of the worked example", () => {
    // Holtrop & Mennen, An approximate power prediction method, International Shipbuilding Progress 29 (1982) 166, from memory:
    // ΔC_D = 0.000956 = (2 + 4 t/c)(0.003605 - rough line) for c 3.065 m, k_p 30 µm, t/c 0.03524.
    const rough = sectionDrag({ ...blade, reynolds: 1e12 });
    expect((2 + 4 * 0.035235) * 0.003605 - rough).toBeCloseTo(0.000956, 6);
  });

  test.each([
    // ITTC 7.5-02-03-01.4, smooth line 0.044/Re^(1/6) - 5/Re^(2/3), one side, evaluated independently.
    { reynolds: 1e8, line: 0.00202 },
    { reynolds: 1e9, line: 0.00139 },
  ])("of a thin smooth blade at Re $reynolds lies on the turbulent line", ({ reynolds, line }) => {
    const drag = sectionDrag({ reynolds, thicknessRatio: 0, chord: 1, roughness: 0 });
    expect(Math.abs(drag - 2 * line)).toBeLessThan(1.1e-5);
  });

  test.each([1e4, 2e4, 5e4, 1e5, 2e5, 5e5, 1e6, 1e7])(
    "at Re %d is above the laminar friction of two sides, and the model does not turn down below 2e5",
    (reynolds) => {
      // Blasius: 1.328/sqrt(Re) a side.
      const at = (Re: number) => sectionDrag({ reynolds: Re, thicknessRatio: 0, chord: 1, roughness: 0 });
      expect(at(reynolds)).toBeGreaterThan((2 * 1.328) / Math.sqrt(reynolds));
      expect(at(reynolds)).toBeGreaterThan(at(1.1 * reynolds));
    },
  );

  test.each([
    // Read off measured sections, from memory, after Schmitz, Aerodynamik des Flugmodells (1942): flat plate 3 % thick,
    // C_D,min 0.015 to 0.030 over Re 4e4 to 1.7e5, ± 30 %.
    { reynolds: 4e4 },
    { reynolds: 1e5 },
    { reynolds: 1.7e5 },
  ])("of a plate 3 % thick at Re $reynolds lies where plates were measured", ({ reynolds }) => {
    const drag = sectionDrag({ reynolds, thicknessRatio: 0.03, chord: 0.1, roughness: 0 });
    expect(drag).toBeGreaterThan(0.015 * 0.7);
    expect(drag).toBeLessThan(0.03 * 1.3);
  });
});

/** A long wing in straight flow at a high Reynolds number. */
const wing = (camberRatio: number) =>
  new ModelledLaw({
    thicknessRatio: 0,
    camberRatio,
    chord: 1,
    reynolds: 1e12,
    roughness: 0,
    liftFactor: 1,
    dragFactor: 1,
    aspectRatio: 1e9,
    chordToRadius: 0,
  });
const liftAt = (law: ModelledLaw, angle: number) => {
  const out = new Float64Array(2);
  law.coefficients(angle, out);
  return out[0]!;
};

test("a thin section without viscosity has the lift of thin-aerofoil theory", () => {
  // Slope 2π, 0.10966 a degree; zero lift of a circular arc at -1.146° per per cent of camber; C_L(0) = 4π f/c, 0.1257 per per
  // cent. Abbott & von Doenhoff, Theory of Wing Sections (1959), ch. 4.
  expect(liftAt(wing(0), degrees(1))).toBeCloseTo(0.10966, 4);
  expect(liftAt(wing(0.01), 0)).toBeCloseTo(0.1257, 4);
  expect(wing(0.03).zeroLiftAngle).toBeCloseTo(degrees(-3 * 1.146), 4);
});

test("a section from ahead and from behind across the flow carries no lift, and no jump on the way round", () => {
  const law = new ModelledLaw({
    thicknessRatio: 0.1,
    camberRatio: 0.04,
    chord: 0.02,
    reynolds: 8e4,
    roughness: 0,
    liftFactor: 1,
    dragFactor: 1,
    aspectRatio: 3,
    chordToRadius: 0.6,
  });
  expect(Math.abs(liftAt(law, Math.PI / 2))).toBeLessThan(1e-12);
  expect(Math.abs(liftAt(law, -Math.PI / 2))).toBeLessThan(1e-12);
  expect(liftAt(law, Math.PI)).toBeCloseTo(liftAt(law, -Math.PI), 12);
  for (let step = -1800; step < 1800; step++) {
    const [here, next] = [liftAt(law, degrees(step / 10)), liftAt(law, degrees((step + 1) / 10))];
    // A tenth of a degree at the steepest lift, 2π a radian, is 0.011.
    expect(Math.abs(next - here)).toBeLessThan(0.02);
  }
});

test("the lift of a wing as broad as long is that of Helmbold's lifting surface over Prandtl's lifting line", () => {
  // Helmbold (1942): C_L,α = 2π AR/(2 + sqrt(AR² + 4)). At AR 1 and 4: 1.4832 and 3.8832; Prandtl: 2π AR/(AR + 2) 2.0944, 4.1888.
  expect(broadBlade(1)).toBeCloseTo(1.4832 / 2.0944, 4);
  expect(broadBlade(4)).toBeCloseTo(3.8832 / 4.1888, 4);
});

test("a section turned near the shaft keeps more lift past its stall than one far out", () => {
  const at = (chordToRadius: number) =>
    liftAt(
      new ModelledLaw({
        thicknessRatio: 0.1,
        camberRatio: 0.02,
        chord: 0.02,
        reynolds: 6e4,
        roughness: 0,
        liftFactor: 1,
        dragFactor: 1,
        aspectRatio: 5,
        chordToRadius,
      }),
      degrees(20),
    );
  expect(at(0.6)).toBeGreaterThan(1.3 * at(0.1));
});

describe("the curve through stations", () => {
  // scipy 1.17.1, scipy.interpolate.PchipInterpolator.
  test.each([
    { x: [0, 1, 2.5, 4, 7], y: [0, 1, 1.2, 0.3, 0.35], at: 0.3, value: 0.39834016528925614 },
    { x: [0, 1, 2.5, 4, 7], y: [0, 1, 1.2, 0.3, 0.35], at: 1.7, value: 1.1393812059993877 },
    { x: [0, 1, 2.5, 4, 7], y: [0, 1, 1.2, 0.3, 0.35], at: 6.8, value: 0.3406518518518518 },
    { x: [1, 2], y: [3, 5], at: 1.25, value: 3.5 },
    { x: [0, 1, 3], y: [0, 2, -1], at: 2.9, value: -0.6322916666666663 },
    { x: [0, 1, 2, 3], y: [0, 0.1, 3, 3.05], at: 0.4, value: 0.01664 },
    { x: [0, 1, 2, 3], y: [0, 0.1, 3, 3.05], at: 2.9, value: 3.0494847457627117 },
  ])("through $y is $value at $at", ({ x, y, at, value }) => {
    expect(monotoneCubic(x, y)(at)).toBeCloseTo(value, 12);
  });

  test("holds its end values outside, and the value of a single point everywhere", () => {
    expect(monotoneCubic([0, 1], [3, 5])(-1)).toBe(3);
    expect(monotoneCubic([0, 1], [3, 5])(2)).toBe(5);
    expect(monotoneCubic([2], [7])(9)).toBe(7);
  });
});
