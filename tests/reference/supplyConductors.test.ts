import { expect, test } from "vitest";
import { copperResistanceRatio } from "../../shared/quantity/copper.ts";
import { conductorResistance, gaugeArea, listedConductor, resistancePerLength } from "../../shared/supply/conductor.ts";
import { relative } from "../relative.ts";

/**
 * ASTM B258: d = 0.127 mm x 92^((36 - n)/39); resistance at 20 °C with 1/58 Ω mm²/m (IEC 60028:1925). Evaluated by
 * Python 3.11; the last column is the published table, NBS Handbook 100, Copper Wire Tables (from memory), Ω/km.
 */
test.each([
  [8, 8.3655640601, 2.0609942362, null],
  [10, 5.2611549545, 3.2771092012, 3.277],
  [12, 3.3087728761, 5.2108077393, 5.211],
  [14, 2.0809077171, 8.2855088521, 8.286],
  [16, 1.3086957278, 13.1744751241, 13.17],
  [18, 0.8230468337, 20.9482359979, 20.95],
  [20, 0.5176192419, 33.3089999632, 33.31],
  [22, 0.3255339412, 52.963384538, 52.96],
  [24, 0.2047303081, 84.2150801529, 84.22],
  [26, 0.1287561565, 133.9072226413, 133.9],
  [28, 0.0809755428, 212.9208241915, 212.9],
  [9, null, 2.5988657478, null],
  [11, null, 4.1323584051, null],
  [13, null, 6.5707072412, null],
  [15, null, 10.4478337593, null],
  [17, null, 16.6127064035, null],
  [19, null, 26.4152378767, null],
  [21, null, 42.0018734538, null],
  [23, null, 66.7855948093, null],
  [25, null, 106.1932553781, null],
  [27, null, 168.853890124, null],
])("AWG %d has %d mm² and %d Ω/km", (gauge, area, resistance, published) => {
  const perKilometre = 1000 * resistancePerLength({ given: "gauge", gauge }).value;
  if (area !== null) expect(gaugeArea(gauge) * 1e6).toSatisfy(relative(area, 1e-9));
  expect(perKilometre).toSatisfy(relative(resistance, 1e-9));
  if (published !== null) expect(perKilometre).toSatisfy(relative(published, 5e-4));
});

/** IEC 60228:2004, tables 3 (class 5, plain) and 2 (class 2, plain), Ω/km at 20 °C. */
test.each([
  [0.5, 39.0, 36.0],
  [0.75, 26.0, 24.5],
  [1, 19.5, 18.1],
  [1.5, 13.3, 12.1],
  [2.5, 7.98, 7.41],
  [4, 4.95, 4.61],
  [6, 3.3, 3.08],
  [10, 1.91, 1.83],
  [16, 1.21, 1.15],
])("%d mm² has at most %d Ω/km as flexible wire, %d stranded", (squareMillimetres, flexible, stranded) => {
  const area = squareMillimetres * 1e-6;
  expect(1000 * resistancePerLength({ given: "area", area }).value).toBeCloseTo(flexible, 12);
  expect(1000 * listedConductor(area)!.stranded).toBeCloseTo(stranded, 12);
});

test("a section that is not listed is that much copper, 1/58 Ω mm²/m", () => {
  const { value, standardUncertainty } = resistancePerLength({ given: "area", area: 3e-6 });
  expect(value).toSatisfy(relative(1 / 58 / 3, 1e-14));
  // 1 to 3 % more for strands (common practice, no source): 3 % over sqrt(3).
  expect(standardUncertainty / value).toBeCloseTo(0.0173205, 6);
});

test.each([
  [-10, 0.8821],
  [0, 0.9214],
  [25, 1.01965],
  [40, 1.0786],
  [60, 1.1572],
  [80, 1.2358],
  [100, 1.3144],
])("copper at %d °C has %d times its resistance at 20 °C (IEC 60028)", (celsius, factor) => {
  expect(copperResistanceRatio(celsius + 273.15)).toBeCloseTo(factor, 12);
});

test("25 m of 1.5 mm² flexible lead lose what a calculation by hand gives", () => {
  const lead = { length: 25, size: { given: "area" as const, area: 1.5e-6 }, pairs: 1 };
  // 50 x 13.3e-3 = 0.665 Ω; at 12 °C x 0.96856 = 0.6440924 Ω; 10 A: 6.440924 V and 64.40924 W.
  expect(conductorResistance(lead).value).toSatisfy(relative(0.665, 1e-14));
  const cold = conductorResistance(lead, 285.15);
  expect(cold.value).toSatisfy(relative(0.6440924, 1e-12));
  expect(cold.value * 10 ** 2).toSatisfy(relative(64.40924, 1e-12));
  expect(cold.standardUncertainty).toSatisfy(relative((50e-3 * (13.3 - 12.1) * 0.96856) / Math.sqrt(3), 1e-9));
});

test("20 m of AWG 18 have 0.8379 Ω there and back, and half of it as two pairs", () => {
  const lead = { length: 20, size: { given: "gauge" as const, gauge: 18 }, pairs: 1 };
  expect(conductorResistance(lead).value).toSatisfy(relative(0.837929439916, 1e-11));
  expect(conductorResistance({ ...lead, pairs: 2 }).value).toSatisfy(relative(0.837929439916 / 2, 1e-11));
});

test("a stated resistance is taken as it is, warmed and doubled", () => {
  const lead = { length: 10, size: { given: "resistance" as const, resistancePerLength: 0.02 }, pairs: 1 };
  expect(conductorResistance(lead)).toEqual({ value: 0.4, standardUncertainty: 0 });
  expect(conductorResistance(lead, 353.15).value).toBeCloseTo(0.4 * 1.2358, 12);
});
