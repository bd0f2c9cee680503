import { describe, expect, test } from "vitest";
import {
  decimalsFor,
  formatInterval,
  formatNumber,
  formatPercent,
  formatQuantity,
  formatUncertain,
} from "../../shared/quantity/format.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";

const NEWTON = { symbol: "N", factor: 1 };
const CELSIUS = { symbol: "°C", factor: 1, offset: 273.15 };
const THIN = "\u202f";

test.each([
  { value: 0, shown: "0", why: "nothing" },
  { value: 12.345, shown: "12.3", why: "three digits" },
  { value: 1234.5, shown: "1235", why: "whole digits are never cut" },
  { value: 0.012345, shown: "0.0123", why: "no exponent for small numbers" },
  { value: -0.5, shown: "\u22120.500", why: "a real minus sign" },
  { value: 0.00001234, shown: "1.23e\u22125", why: "an exponent below 1e-4" },
  { value: 12345678, shown: "1.23e+7", why: "an exponent from 1e7" },
  { value: Number.NaN, shown: "unknown", why: "never NaN" },
  { value: Number.POSITIVE_INFINITY, shown: "unknown", why: "never Infinity" },
  { value: 9.999, shown: "10.0", why: "rounding into the next power of ten keeps the digits" },
  { value: 0.09999, shown: "0.100", why: "and below one" },
])("$value is shown as $shown ($why)", ({ value, shown }) => {
  expect(formatNumber(value)).toBe(shown);
});

describe("formatQuantity", () => {
  test("has a thin space before the unit", () => {
    expect(formatQuantity(12.345, NEWTON)).toBe(`12.3${THIN}N`);
  });

  test("takes the offset of a temperature scale into account", () => {
    expect(formatQuantity(291.15, CELSIUS)).toBe(`18.0${THIN}°C`);
  });

  test("sets no space before the sign of an angle and no unit on a plain number", () => {
    expect(formatQuantity(Math.PI / 2, { symbol: "°", factor: Math.PI / 180 })).toBe("90.0°");
    expect(formatQuantity(0.25, { symbol: "1", factor: 1 })).toBe("0.250");
  });
});

test.each([
  { part: 0.0251, digits: 2, shown: "2.5 %" },
  { part: 1.2345, digits: 3, shown: "123 %" },
  { part: -0.5, digits: 2, shown: "\u221250 %" },
])("$part is $shown to $digits digits", ({ part, digits, shown }) => {
  expect(formatPercent(part, digits)).toBe(shown);
});

// Particle Data Group, Review of Particle Physics, Introduction 5.3: 0.827 ± 0.119 becomes 0.83 ± 0.12, and
// 0.827 ± 0.367 becomes 0.8 ± 0.4.
test.each([
  { uncertainty: 0.119, decimals: 2 },
  { uncertainty: 0.367, decimals: 1 },
  { uncertainty: 0.354, decimals: 2 },
  { uncertainty: 0.355, decimals: 1 },
  { uncertainty: 0.96, decimals: 1 },
  { uncertainty: 12, decimals: 0 },
])("an uncertainty of $uncertainty keeps $decimals decimals", ({ uncertainty, decimals }) => {
  expect(Math.max(0, decimalsFor(uncertainty))).toBe(decimals);
});

test("value and half-width of the 95 % interval stand with the digits the doubt deserves", () => {
  expect(formatUncertain({ value: 0.827, standardUncertainty: 0.06, interval95: [0.708, 0.946] })).toBe("0.83 ± 0.12");
  expect(formatUncertain(uncertain(24.926, 0.06), NEWTON)).toBe(`24.93 ± 0.12${THIN}N`);
});

test("a lopsided interval is told by its ends", () => {
  const lopsided = { value: 2.08, standardUncertainty: 0.09, interval95: [1.91, 2.3] } as const;
  expect(formatUncertain(lopsided)).toBe("2.08 (1.91 to 2.30)");
});

test("a value without doubt is shown plainly", () => {
  expect(formatUncertain({ value: 24.926, standardUncertainty: 0, interval95: [24.926, 24.926] }, NEWTON)).toBe(
    `24.93${THIN}N`,
  );
});

test("an interval is shown in the unit of the reader", () => {
  expect(formatInterval([24.806, 25.046], NEWTON)).toBe(`24.81 to 25.05${THIN}N`);
  expect(formatInterval([0.0759, 0.0761], { symbol: "mm", factor: 1e-3 })).toBe(`75.90 to 76.10${THIN}mm`);
});
