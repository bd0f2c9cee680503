import { describe, expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";
import type { BladeGeometry, BladeStation } from "../../shared/model/bladeGeometry.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { checkedGeometry } from "../../shared/propeller/blade/checkedGeometry.ts";
import { geometryWarnings } from "../../shared/propeller/blade/geometryWarnings.ts";
import { polarWarnings } from "../../shared/propeller/blade/polarWarnings.ts";
import { PolarLaw, polarTables } from "../../shared/propeller/section/polarTables.ts";
import { bladeGeometryOf } from "../../shared/sections/bladeGeometryOf.ts";
import { type BladeFrame, geometryOfTable } from "../../shared/sections/geometryTable.ts";
import { sectionPolarOf } from "../../shared/sections/sectionPolarOf.ts";

const station = (radius: number, more: Partial<BladeStation> = {}): BladeStation => ({
  radius,
  chord: 0.012,
  pitchAngle: 0.4,
  thickness: 0.002,
  camber: 0.0004,
  ...more,
});

const geometryOfText = (text: string, name: string, frame: BladeFrame) =>
  geometryOfTable(readLog(new TextEncoder().encode(text), name), frame);

const GOOD: BladeGeometry = {
  bladeCount: 3,
  diameter: 0.08,
  hubDiameter: 0.016,
  stations: [station(0.008), station(0.02), station(0.03), station(0.04)],
};
const withStation = (i: number, more: Partial<BladeStation>): BladeGeometry => ({
  ...GOOD,
  stations: GOOD.stations.map((one, j) => (i === j ? { ...one, ...more } : one)),
});

test("a good geometry passes unchanged, without a warning", () => {
  expect(checkedGeometry(GOOD)).toBe(GOOD);
  expect(geometryWarnings(GOOD)).toEqual([]);
});

test("a tip without chord passes", () => {
  expect(checkedGeometry(withStation(3, { chord: 0, thickness: 0.0005 })).stations).toHaveLength(4);
});

test.each([
  {
    geometry: { ...GOOD, hubDiameter: 0.079 },
    code: "propeller.hub-size",
    where: "hubDiameter",
    says: "79.00 mm wide",
  },
  {
    geometry: withStation(2, { radius: 0.02 }),
    code: "propeller.station-order",
    where: "stations[2].radius",
    says: "station 3",
  },
  {
    geometry: withStation(1, { chord: 15, thickness: 0.1 }),
    code: "propeller.station-units",
    where: "stations[1].chord",
    says: "the chord is 15000 mm in a propeller of 80.00 mm",
  },
  {
    geometry: withStation(1, { chord: -0.01 }),
    code: "propeller.station-chord",
    where: "stations[1].chord",
    says: "−10.00 mm",
  },
  {
    geometry: withStation(1, { chord: 0 }),
    code: "propeller.station-chord",
    where: "stations[1].chord",
    says: "only at the tip",
  },
  {
    geometry: withStation(0, { thickness: 0.008 }),
    code: "propeller.station-thickness",
    where: "stations[0].thickness",
    says: "60 % of the chord",
  },
  {
    geometry: withStation(3, { thickness: 0 }),
    code: "propeller.station-thickness",
    where: "stations[3].thickness",
    says: "above 0",
  },
  {
    geometry: withStation(2, { camber: 0.003 }),
    code: "propeller.station-camber",
    where: "stations[2].camber",
    says: "20 % of the chord",
  },
  {
    geometry: withStation(1, { pitchAngle: 27 }),
    code: "propeller.station-pitch",
    where: "stations[1].pitchAngle",
    says: "If it is 27.00°, send 0.4712 rad",
  },
  {
    geometry: { ...GOOD, stations: GOOD.stations.map((one) => ({ ...one, radius: one.radius * 1000 })) },
    code: "propeller.station-units",
    where: "stations[3].radius",
    says: "millimetres read as metres",
  },
  {
    geometry: { ...GOOD, stations: GOOD.stations.map((one) => ({ ...one, radius: one.radius * 2 })) },
    code: "propeller.station-units",
    where: "stations[3].radius",
    says: "Halve them",
  },
  {
    geometry: { ...GOOD, diameter: 0.04 * 2 * 25.4 },
    code: "propeller.station-units",
    where: "stations[3].radius",
    says: "inches",
  },
  {
    geometry: { ...GOOD, stations: GOOD.stations.slice(0, 3) },
    code: "propeller.blade-tip",
    where: "stations[2].radius",
    says: "Add a station at the tip",
  },
  {
    geometry: {
      ...GOOD,
      bladeCount: 7,
      stations: [station(0.008, { thickness: 0.007, pitchAngle: 0.3 }), ...GOOD.stations.slice(1)],
    },
    code: "propeller.blades-meet",
    where: "stations[0].chord",
    says: "7 blades",
  },
])("refused with $code at $where: $says", ({ geometry, code, where, says }) => {
  expect(() => checkedGeometry(geometry)).toThrow(
    expect.objectContaining({
      message: expect.stringContaining(says),
      problem: expect.objectContaining({ code, where }),
    }),
  );
});

test.each([
  { geometry: { ...GOOD, bladeCount: 6 }, code: "propeller.blades-overlap" },
  { geometry: { ...GOOD, hubDiameter: 0.001 }, code: "propeller.blade-root-guessed" },
  {
    geometry: { ...GOOD, stations: GOOD.stations.map((one) => ({ ...one, pitchAngle: 0.02 })) },
    code: "propeller.pitch-nearly-flat",
  },
  // A pitch of 8 mm and of 800 mm in a propeller of 80 mm: centimetres read as millimetres, and the other way round.
  ...[0.008, 0.8].map((pitch) => ({
    geometry: {
      ...GOOD,
      stations: GOOD.stations.map((one) => ({ ...one, pitchAngle: Math.atan2(pitch, 2 * Math.PI * one.radius) })),
    },
    code: "propeller.pitch-unlikely",
  })),
])("warned of with $code", ({ geometry, code }) => {
  expect(geometryWarnings(geometry).map((one) => one.code)).toEqual([code]);
});

describe("the pieces of a blade", () => {
  test("fill it from hub to tip", () => {
    const { pieces } = bladeShape(GOOD);
    expect(pieces.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(0.032, 12);
    expect(pieces[0]!.radius).toBeGreaterThan(0.008);
    expect(pieces.at(-1)!.radius).toBeLessThan(0.04);
  });

  test("towards a tip without chord keep the thickness ratio of the station before", () => {
    const { pieces } = bladeShape(withStation(3, { chord: 0, thickness: 0.001 }));
    expect(pieces.at(-1)!.thicknessRatio).toBeCloseTo(0.002 / 0.012, 12);
    expect(pieces.at(-1)!.chord).toBeLessThan(0.001);
  });
});

describe("a table of sections", () => {
  const ROWS = "8,11,40,3,0.5\n20,14,26,2,0.4\n38,2,14,1,0.1\n";
  const frame = { bladeCount: 3 };

  test("is read with the units of its header; diameter and hub are those of the outermost and innermost row", () => {
    const text = `radius (mm),chord (mm),pitch angle (deg),thickness (mm),camber (mm)\n${ROWS}`;
    const geometry = geometryOfText(text, "blade.csv", frame);
    expect(geometry.diameter).toBeCloseTo(0.076, 12);
    expect(geometry.hubDiameter).toBeCloseTo(0.016, 12);
    expect(geometry.stations[1]).toEqual({
      radius: 0.02,
      chord: 0.014,
      pitchAngle: (26 * Math.PI) / 180,
      thickness: 0.002,
      camber: 0.0004,
    });
  });

  test("may have semicolons and decimal commas, and quantities as their usual ratios", () => {
    const text = "r/R;c/D;P/D;t/c;f/c\n0,2;0,2;0,9;0,2;0,02\n0,6;0,25;0,9;0,1;0,02\n1,0;0,02;0,9;0,1;0,0\n";
    const { stations } = geometryOfText(text, "blade.csv", { ...frame, diameter: 0.08 });
    // θ = atan(0.9/(0.6 π)) = 25.52°, by hand.
    expect((stations[1]!.pitchAngle * 180) / Math.PI).toBeCloseTo(25.52, 2);
    expect(stations[1]!.chord).toBeCloseTo(0.02, 12);
    expect(stations[1]!.thickness).toBeCloseTo(0.002, 12);
    expect(stations[1]!.camber).toBeCloseTo(0.0004, 12);
  });

  test("may give the pitch in millimetres, and skew besides", () => {
    const text =
      "r [mm]\tc [mm]\tpitch [mm]\tt [mm]\tf [mm]\tskew [deg]\n8\t11\t60\t3\t0.5\t0\n38\t2\t60\t1\t0.1\t10\n";
    const { stations } = geometryOfText(text, "blade.tsv", frame);
    expect(stations[0]!.pitchAngle).toBeCloseTo(Math.atan(60 / (2 * Math.PI * 8)), 12);
    expect(stations[1]!.skew).toBeCloseTo(Math.PI / 18, 12);
  });

  test("calls a pitch in degrees what it is, an angle", () => {
    const text = `radius (mm),chord (mm),pitch (deg),thickness (mm),camber (mm)\n${ROWS}`;
    expect(geometryOfText(text, "blade.csv", frame).stations[0]!.pitchAngle).toBeCloseTo((40 * Math.PI) / 180, 12);
  });

  test.each([
    {
      head: "radius,chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "sections.no-unit",
      where: 'column "radius"',
    },
    {
      head: "radius (mm),chord (mm),pitch angle (deg),thickness (mm),rake (mm)",
      code: "sections.no-column",
      where: "blade.csv",
    },
    {
      head: "radius (kg),chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "quantity.wrong-dimension",
      where: 'column "radius (kg)"',
    },
    {
      head: "r/R,chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "sections.no-diameter",
      where: "blade.csv",
    },
  ])("under $head is refused with $code", ({ head, code, where }) => {
    expect(() => geometryOfText(`${head}\n${ROWS}`, "blade.csv", frame)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code, where: expect.stringContaining(where) }) }),
    );
  });

  test("with an empty cell names line and column", () => {
    const text =
      "radius (mm),chord (mm),pitch angle (deg),thickness (mm),camber (mm)\n8,11,40,3,0.5\n20,,26,2,0.4\n38,2,14,1,0.1\n";
    expect(() => geometryOfText(text, "blade.csv", frame)).toThrow(/line 3, column "chord \(mm\)"/);
  });
});

describe("a plain outline", () => {
  test.each([{ outline: "elliptic" as const }, { outline: "constant" as const }])(
    "$outline has the pitch and about the area that were asked for",
    ({ outline }) => {
      const { geometry } = bladeGeometryOf({
        from: "outline",
        outline,
        bladeCount: 3,
        diameter: 0.1,
        hubDiameter: 0.02,
        pitchRatio: 0.9,
        areaRatio: 0.3,
        thicknessRatio: 0.1,
        camberRatio: 0.02,
      });
      for (const { radius, pitchAngle } of geometry.stations) {
        expect(2 * Math.PI * radius * Math.tan(pitchAngle)).toBeCloseTo(0.09, 9);
      }
      const area = 3 * bladeShape(geometry).pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
      expect(area / (Math.PI * 0.05 ** 2)).toBeCloseTo(0.3, 2);
    },
  );
});

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

test("a propeller stored before blades had a shape still loads, and one with a shape keeps it", () => {
  const old = { name: "old", diameter: 0.08, diameterUncertainty: 0.0001 };
  expect(Propeller.parse(old)).not.toHaveProperty("geometry");
  expect(Propeller.parse({ ...old, geometry: GOOD }).geometry).toEqual(GOOD);
});

test("what was solved is told with what to know of it", () => {
  const fluid = { density: 1000, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2000 };
  const codes = (roughness: number, rotationRate: number, advanceSpeed: number, geometry = GOOD) => {
    const surface = { roughness, liftFactor: 1, dragFactor: 1 };
    const result = solvedBlade(bladeShape(geometry), { surface, fluid, rotationRate, advanceSpeed });
    return result.state === "solved" ? result.warnings.map(({ code }) => code) : [result.reason];
  };
  const slender = { ...GOOD, bladeCount: 2, stations: GOOD.stations.map((one) => ({ ...one, chord: 0.008 })) };
  expect(codes(0, 50, 0, slender)).toEqual([]);
  const broad = { ...GOOD, stations: GOOD.stations.map((one) => ({ ...one, chord: 0.015 })) };
  expect(codes(0, 50, 0, broad)).toEqual(["propeller.blades-broad"]);
  expect(codes(1e-3, 50, 0, slender)).toEqual(["propeller.rougher-than-line"]);
  expect(codes(0, 3, 0, slender)).toEqual(["propeller.reynolds-below-model"]);
  expect(codes(0, 50, -3, slender)).toEqual(["propeller.stream-opposed"]);
});
