import { expect, test } from "vitest";
import { Pack } from "../../shared/model/parts/pack.ts";
import { cellVoltage } from "../../shared/supply/chargeCurve.ts";
import { packState } from "../../shared/supply/packState.ts";
import { supplyOf } from "../../shared/supply/supplyOf.ts";
import { relative } from "../relative.ts";

/**
 * Chen et al., J. Electrochem. Soc. 167 (2020) 080534: the fits of both electrodes evaluated by Python 3.11 `math`,
 * x_p = 0.9084 - 0.6423 s, x_n = 0.0279 + 0.8735 s (ends from memory), rounded to 1e-6 V. The first column of each row is
 * not a point of the table in the program.
 */
test.each([
  [0.01, 2.695324],
  [0.03, 2.940311],
  [0.075, 3.172298],
  [0.125, 3.340475],
  [0.175, 3.427246],
  [0.25, 3.494197],
  [0.35, 3.597055],
  [0.45, 3.668225],
  [0.55, 3.757294],
  [0.65, 3.86212],
  [0.75, 3.971285],
  [0.85, 4.070024],
  [0.925, 4.100487],
  [0.975, 4.147297],
])("a cell with %d of its charge has the %d V of the published fits, to 0.01 V", (charge, voltage) => {
  expect(Math.abs(cellVoltage(charge) - voltage)).toBeLessThan(0.01);
});

test("between its points the table runs as the monotone interpolation of a numerical library", () => {
  // scipy 1.17.1, interpolate.PchipInterpolator over the same fifteen points; their inner slopes differ by rounding only.
  expect(cellVoltage(0.25)).toBeCloseTo(3.5001645079988273, 9);
  expect(cellVoltage(0.85)).toBeCloseTo(4.061593719571686, 9);
  expect(cellVoltage(0.01)).toBeCloseTo(2.691622384725338, 9);
});

const PACK = Pack.parse({
  name: "4 in series, 2 in parallel",
  openCircuitVoltage: 14.831052,
  resistance: 0.04,
  cells: { series: 4, parallel: 2, statedCharge: 0.5 },
});

test("a pack at another charge stands higher or lower by its cells in series", () => {
  // 4 x 3.707763 V at half charge; 4 x 4.192911 V full and 4 x 3.449299 V at a fifth, values of the table above.
  expect(packState(PACK).openCircuitVoltage).toBe(14.831052);
  expect(packState(PACK, { charge: 1 }).openCircuitVoltage).toBeCloseTo(16.771644, 9);
  expect(packState(PACK, { charge: 0.2 }).openCircuitVoltage).toBeCloseTo(13.797196, 9);
  expect(packState(PACK, { charge: 1 }).uncertainties.openCircuitVoltage).toBeCloseTo(0.1 * (16.771644 - 14.831052), 9);
});

test("the resistance of cells doubles from 25 to 0 °C and does not fall above 20 °C", () => {
  // Common practice, no source: a doubling over 25 K; the stated resistance belongs to 20 °C.
  const at = (celsius: number) => packState(PACK, { temperature: celsius + 273.15 });
  expect(at(-5).resistance / at(20).resistance).toBeCloseTo(2, 12);
  expect(at(0).resistance).toBeCloseTo(0.04 * 2 ** 0.8, 12);
  expect(at(35).resistance).toBe(0.04);
  expect(at(0).uncertainties.resistance).toBeCloseTo(0.4 * 0.04 * (2 ** 0.8 - 1), 12);
  expect(at(4).warnings).toEqual([]);
  expect(at(-5).warnings.map(({ code }) => code)).toEqual(["supply.cold-pack"]);
});

test("four cells of 20 mΩ in series, two in parallel, sag by 0.4 V under 10 A", () => {
  // Exact: 4 x 20e-3/2 = 0.040 Ω, 0.400 V.
  const resistance = (4 * 0.02) / 2;
  const { resistance: found } = supplyOf({ pack: { ...PACK, resistance } });
  expect(found * 10).toBeCloseTo(0.4, 14);
});

test("pack, leads and tether add up, and limits are those of each", () => {
  const pack = Pack.parse({
    ...PACK,
    lead: { length: 0.5, size: { given: "gauge", gauge: 14 } },
    currentLimit: 40,
    fuseCurrent: 30,
    leastVoltage: 12,
    uncertainties: { resistance: 0.003 },
  });
  const conductor = { length: 25, size: { given: "area" as const, area: 1.5e-6 }, pairs: 2 };
  const tether = { name: "tether", diameter: 0.01, conductor, currentLimit: 8, note: "" };
  const supply = supplyOf({ pack, tether, temperature: 285.15 });
  const [ofPack, leads, ofTether] = supply.parts;
  expect(supply.parts.map(({ name }) => name)).toEqual(["pack", "leads", "tether"]);
  // 12 °C: 1 - 8 x 0.00393 = 0.96856. Leads 1 m of 8.2855088521 Ω/km; tether 0.6440924 Ω over two pairs.
  expect(leads!.resistance).toSatisfy(relative(8.2855088521e-3 * 0.96856, 1e-9));
  expect(ofTether!.resistance).toSatisfy(relative(0.6440924 / 2, 1e-9));
  expect(ofPack!.resistance).toSatisfy(relative(0.04 * 2 ** (8 / 25), 1e-12));
  expect(supply.resistance).toBeCloseTo(ofPack!.resistance + leads!.resistance + ofTether!.resistance, 14);
  expect(supply.limits).toEqual({ supplyCurrent: 40, fuseCurrent: 30, tetherCurrent: 8, supplyVoltage: 12 });
  expect(supply.warnings).toEqual([]);
});

test.each([
  { what: "a charge without cells", assembly: { charge: 0.3 }, code: "supply.no-cells" },
  { what: "a cold pack without cells", assembly: { temperature: 277.15 }, code: "supply.no-cells" },
  {
    what: "a tether without conductors",
    assembly: { tether: { name: "t", diameter: 0.01, note: "" } },
    code: "supply.tether-without-conductor",
  },
])("$what is told", ({ assembly, code }) => {
  const { cells: _cells, ...pack } = PACK;
  expect(supplyOf({ pack, ...assembly }).warnings.map((warning) => warning.code)).toEqual([code]);
  expect(supplyOf({ pack }).warnings).toEqual([]);
});

test("a stated voltage that no cell of this chemistry has is told, and a curve of its own is taken", () => {
  // Lithium iron phosphate, 3.3 V a cell over most of its charge (common practice, no source).
  const iron = { ...PACK, openCircuitVoltage: 13.2 };
  expect(packState(iron).warnings.map(({ code }) => code)).toEqual(["supply.cell-voltage"]);
  const curve = [
    { charge: 0.1, voltage: 3.2 },
    { charge: 0.5, voltage: 3.3 },
    { charge: 0.9, voltage: 3.34 },
  ];
  const withCurve = { ...iron, cells: { ...PACK.cells!, curve } };
  expect(packState(withCurve, { charge: 0.9 })).toMatchObject({ warnings: [] });
  expect(packState(withCurve, { charge: 0.9 }).openCircuitVoltage).toBeCloseTo(13.36, 12);
  expect(packState(withCurve, { charge: 0.9 }).uncertainties.openCircuitVoltage).toBe(0);
  expect(() => packState(withCurve, { charge: 0.95 })).toThrow(/outside the curve.*0\.1\d* to 0\.9/s);
});

test.each([
  {
    what: "a falling voltage",
    points: [
      [0, 3.4],
      [1, 3.3],
    ],
  },
  {
    what: "two voltages at one charge",
    points: [
      [0, 3.2],
      [0.5, 3.3],
      [0.5, 3.4],
    ],
  },
])("a curve with $what is refused", ({ points }) => {
  const curve = points.map(([charge, voltage]) => ({ charge: charge!, voltage: voltage! }));
  expect(() => cellVoltage(0.5, curve)).toThrow(/charge and voltage both rising/);
});
