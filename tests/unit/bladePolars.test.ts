import { describe, expect, test } from "vitest";
import { solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { polarWarnings } from "../../shared/propeller/blade/polarWarnings.ts";
import { PolarLaw, polarTables } from "../../shared/propeller/section/polarTables.ts";
import { sectionPolarOf } from "../../shared/sections/sectionPolarOf.ts";
import { GOOD } from "./bladeCase.ts";

describe("a polar", () => {
  const TEXT = "alpha (deg),C_L,C_D\n-6,-0.4,0.04\n0,0.2,0.02\n6,0.8,0.03\n12,1.1,0.08\n";
  const surface = { roughness: 0, liftFactor: 1, dragFactor: 1 };
  const out = new Float64Array(2);
  const long = 1e9;

  test("is read between its rows as a straight line, and beyond them as a stalled plate", () => {
    const law = new PolarLaw(polarTables(sectionPolarOf(TEXT), long), 1e5, surface);
    law.coefficients((3 * Math.PI) / 180, out);
    expect(out[0]).toBeCloseTo(0.5, 6);
    expect(out[1]).toBeCloseTo(0.025, 6);
    law.coefficients(Math.PI / 2, out);
    expect(out[0]).toBeCloseTo(0, 6);
    // C_D,max of a long plate: 2.01 (Viterna & Corrigan 1982).
    expect(out[1]).toBeCloseTo(2.01, 6);
    expect((law.zeroLiftAngle * 180) / Math.PI).toBeCloseTo(-2, 6);
  });

  test("of two Reynolds numbers is taken between them on a logarithmic scale, and held outside", () => {
    const text =
      "alpha (deg);C_L;C_D;Re\n-5;-0,5;0,04;10000\n5;0,5;0,04;10000\n-5;-0,5;0,02;1000000\n5;0,5;0,02;1000000\n";
    const tables = polarTables(sectionPolarOf(text), long);
    const dragAt = (Re: number) => {
      new PolarLaw(tables, Re, surface).coefficients(0, out);
      return out[1];
    };
    expect(dragAt(1e5)).toBeCloseTo(0.03, 9);
    expect(dragAt(1e3)).toBeCloseTo(0.04, 9);
    expect(dragAt(1e8)).toBeCloseTo(0.02, 9);
  });

  test.each([
    {
      text: "alpha (deg),C_L,C_D\n-6,-0.4,0.04\n-7,0.2,0.02\n6,0.8,0.03\n",
      code: "propeller.polar-order",
      where: "points[1]",
    },
    {
      text: "alpha (deg),C_L,C_D\n-6,-0.4,0.04\n0,0.2,-0.02\n6,0.8,0.03\n",
      code: "propeller.polar-drag",
      where: "points[1]",
    },
    {
      text: "alpha (deg),C_L,C_D\n2,-0.4,0.04\n4,0.2,0.02\n6,0.8,0.03\n",
      code: "propeller.polar-span",
      where: "points",
    },
    { text: "alpha (deg),C_L,C_D\n-6,-0.4,0.04\n0,,0.02\n6,0.8,0.03\n", code: "sections.gap", where: "line 3" },
    {
      text: "alpha (deg),C_L,C_D,Re\n-6,-0.4,0.04,2e5\n6,0.2,0.02,2e5\n-6,-0.4,0.04,1e5\n6,0.2,0.02,1e5\n",
      code: "propeller.polar-reynolds",
      where: "blocks[1].reynolds",
    },
    { text: "alpha,C_L,C_D\n-6,-0.4,0.04\n0,0.2,0.02\n6,0.8,0.03\n", code: "sections.no-unit", where: "alpha" },
  ])("with a fault is refused with $code at $where", ({ text, code, where }) => {
    expect(() => sectionPolarOf(text)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code, where: expect.stringContaining(where) }) }),
    );
  });

  test("that gives no numbers makes a typed failure with reason and radius, no exception", () => {
    const tables = {
      logReynolds: [],
      breadth: 1,
      liftSlope: 6,
      angles: [-1, 1] as const,
      tables: [new Float64Array(2 * 1441).fill(Number.NaN)],
    };
    const fluid = { density: 1000, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2000 };
    const result = solvedBlade(bladeShape(GOOD), { surface, fluid, rotationRate: 50, advanceSpeed: 1 }, tables);
    expect(result).toMatchObject({ state: "failed", radius: bladeShape(GOOD).pieces[0]!.radius });
  });
});

test("polars used beyond their angles and Reynolds numbers are told", () => {
  const text = "alpha (deg);C_L;C_D;Re\n-1;-0,1;0,04;100\n1;0,1;0,04;100\n-1;-0,1;0,02;1000\n1;0,1;0,02;1000\n";
  const shape = bladeShape({ ...GOOD, bladeCount: 1 });
  const surface = { roughness: 0, liftFactor: 1, dragFactor: 1 };
  const fluid = { density: 1000, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2000 };
  const running = { surface, fluid, rotationRate: 50, advanceSpeed: 1 };
  const result = solvedBlade(shape, running, polarTables(sectionPolarOf(text), shape.aspectRatio));
  expect(result.state === "solved" && result.warnings.map(({ code }) => code)).toEqual([
    "propeller.polar-beyond-angles",
    "propeller.polar-beyond-reynolds",
  ]);
});

test("a polar whose lift rises more steeply than any section's is told, with the unit that may be wrong", () => {
  // A thin section has 2π a radian, 0.11 a degree; radians under a header of degrees make 57 times that.
  const steep = sectionPolarOf("alpha (deg),C_L,C_D\n-0.17,-0.8,0.05\n0,0.2,0.015\n0.17,1.1,0.03\n");
  const [first] = polarWarnings(polarTables(steep, 5), { elements: [], middle: {} as never, roughness: 0 });
  expect(first).toMatchObject({ code: "propeller.polar-steep", message: expect.stringContaining("by 5.6 a degree") });
});
