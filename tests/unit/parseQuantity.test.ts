import { expect, test } from "vitest";
import { parseQuantity, parseUncertainQuantity } from "../../shared/quantity/parseQuantity.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Dimension } from "../../shared/quantity/units.data.ts";

interface Row {
  readonly text: string;
  readonly as: Dimension;
  readonly si: number;
  readonly why: string;
}

test.each<Row>([
  { text: "76 mm", as: "length", si: 0.076, why: "plain" },
  { text: "3in", as: "length", si: 0.0762, why: "no space" },
  { text: '3"', as: "length", si: 0.0762, why: "the inch mark" },
  { text: "  76\u00a0mm ", as: "length", si: 0.076, why: "blanks of any kind" },
  { text: "0,35 kgf", as: "force", si: 3.4323275, why: "a comma is a decimal mark" },
  { text: ".5 N", as: "force", si: 0.5, why: "no leading zero" },
  { text: "5. N", as: "force", si: 5, why: "nothing after the decimal mark" },
  { text: "-2 N", as: "force", si: -2, why: "a hyphen as minus" },
  { text: "\u22122 N", as: "force", si: -2, why: "a real minus sign" },
  { text: "+2 N", as: "force", si: 2, why: "a plus sign" },
  { text: "1e3 N", as: "force", si: 1000, why: "an exponent" },
  { text: "1.5E-3 N", as: "force", si: 0.0015, why: "a negative exponent in capitals" },
  { text: "5 mN", as: "force", si: 0.005, why: "case tells millinewton apart" },
  { text: "350 g", as: "massAsForce", si: 3.4323275, why: "a scale's grams are a weight" },
  { text: "350 gf", as: "massAsForce", si: 3.4323275, why: "gram-force is the same" },
  { text: "0.1 Nm", as: "torque", si: 0.1, why: "no dot" },
  { text: "0.1 N*m", as: "torque", si: 0.1, why: "a star for the dot" },
  { text: "0.1 N m", as: "torque", si: 0.1, why: "a blank for the dot" },
  { text: "3000 rpm", as: "rotationRate", si: 50, why: "rev/s, never rad/s" },
  { text: "3000 RPM", as: "rotationRate", si: 50, why: "capitals" },
  { text: "900rpm/V", as: "speedConstant", si: 94.24777960769379, why: "a slash in the unit" },
  { text: "45 mΩ", as: "resistance", si: 0.045, why: "the Greek letter" },
  { text: "45 m\u2126", as: "resistance", si: 0.045, why: "the ohm sign" },
  { text: "20 \u03bcs", as: "pulseWidth", si: 2e-5, why: "the Greek mu" },
  { text: "20 \u00b5s", as: "pulseWidth", si: 2e-5, why: "the micro sign" },
  { text: "50 %", as: "fraction", si: 0.5, why: "per cent" },
  { text: "0.5", as: "fraction", si: 0.5, why: "a fraction needs no unit" },
  { text: "0.2", as: "number", si: 0.2, why: "neither does a plain number" },
  { text: "1e3", as: "number", si: 1000, why: "an exponent and no unit" },
])("$text as $as is $si ($why)", ({ text, as, si }) => {
  expect(parseQuantity(text, as)).toBeCloseTo(si, 12);
});

test.each([
  { text: "76", as: "length", code: "quantity.no-unit", says: /"76" has no unit.*76 mm/ },
  { text: "76 kg", as: "force", code: "quantity.wrong-dimension", says: /"kg" is a unit of a mass/ },
  { text: "76 qm", as: "length", code: "quantity.unknown-unit", says: /"qm" is not a unit.*Did you mean/ },
  { text: "1,234.5 N", as: "force", code: "quantity.not-a-number", says: /two decimal marks/ },
  { text: "", as: "length", code: "quantity.not-a-number", says: /nothing was given/ },
  { text: "wide", as: "length", code: "quantity.not-a-number", says: /does not start with a number/ },
  { text: "--5 N", as: "force", code: "quantity.not-a-number", says: /does not start with a number/ },
  { text: "1e999 N", as: "force", code: "quantity.not-a-number", says: /1e999/ },
  { text: "100 %", as: "number", code: "quantity.wrong-dimension", says: /"%" stands.*without a unit.*Write 1 if/ },
  { text: "2 times", as: "number", code: "quantity.unknown-unit", says: /"times" stands.*Write 2 alone/ },
  { text: "abc", as: "number", code: "quantity.not-a-number", says: /Needed: a plain number, without a unit/ },
  { text: "42000 erpm", as: "rotationRate", code: "quantity.no-pole-pairs", says: /pole pairs/ },
] as const)("$text as $as is refused: $code", ({ text, as, code, says }) => {
  const refused = refusal(() => parseQuantity(text, as, { where: "--field" }));
  expect(refused.problem.code).toBe(code);
  expect(refused.problem.where).toBe("--field");
  expect(refused.message).toMatch(says);
});

test("electrical turns are divided by the pole pairs", () => {
  expect(parseQuantity("42000 erpm", "rotationRate", { polePairs: 7 })).toBeCloseTo(100, 12);
});

test.each([
  { text: "76 mm ± 0.1 mm", as: "length", value: 0.076, u: 1e-4, why: "both with unit" },
  { text: "76 ± 0.1 mm", as: "length", value: 0.076, u: 1e-4, why: "one unit at the end" },
  { text: "76 mm +/- 0.1", as: "length", value: 0.076, u: 1e-4, why: "typed with keys, unit in front" },
  { text: "14.8 V ± 0.5 %", as: "voltage", value: 14.8, u: 0.074, why: "relative" },
  { text: "18 °C ± 0.5 °C", as: "temperature", value: 291.15, u: 0.5, why: "a difference, without the offset" },
  { text: "0.2 ± 0.004", as: "number", value: 0.2, u: 0.004, why: "plain numbers" },
  { text: "50 % ± 2 %", as: "fraction", value: 0.5, u: 0.02, why: "per cent points of a fraction" },
  { text: "76 mm", as: "length", value: 0.076, u: null, why: "no doubt stated" },
] as const)("$text has a standard uncertainty of $u ($why)", ({ text, as, value, u }) => {
  const found = parseUncertainQuantity(text, as);
  expect(found.value).toBeCloseTo(value, 12);
  if (u === null) expect(found.standardUncertainty).toBeNull();
  else expect(found.standardUncertainty).toBeCloseTo(u, 12);
});

test("where a bare number may be per cent or a part of one, it must say which", () => {
  const part = (text: string) => parseQuantity(text, "fraction", { unitNeeded: true });
  expect(() => part("1")).toThrow(/may be per cent or a part of one.*Write 1 %, or 1 frac/s);
  expect([part("1 %"), part("0.01 frac"), part("0")]).toEqual([0.01, 0.01, 0]);
});

test("two signs of doubt are refused", () => {
  expect(refusal(() => parseUncertainQuantity("1 ± 2 ± 3 N", "force")).message).toMatch(/more than one ±/);
});

function refusal(action: () => unknown): InputProblem {
  try {
    action();
  } catch (error) {
    if (error instanceof InputProblem) return error;
    throw error;
  }
  throw new Error("was accepted");
}
