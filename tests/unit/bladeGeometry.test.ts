import { describe, expect, test } from "vitest";
import type { BladeGeometry, BladeStation } from "../../shared/model/bladeGeometry.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { checkedGeometry } from "../../shared/propeller/blade/checkedGeometry.ts";
import { geometryWarnings } from "../../shared/propeller/blade/geometryWarnings.ts";
import { bladeGeometryOf } from "../../shared/sections/bladeGeometryOf.ts";
import { GOOD, station } from "./bladeCase.ts";

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
