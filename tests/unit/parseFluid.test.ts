import { describe, expect, test } from "vitest";
import { fluidWarnings } from "../../shared/fluid/fluidWarnings.ts";
import { describeFluid, FLUID_TEXT_HELP, parseFluid } from "../../shared/fluid/parseFluid.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

const celsius = (t: number) => t + 273.15;

test.each<{ text: string; state: FluidState; why: string }>([
  { text: "fresh 18C", state: { kind: "fresh", temperature: celsius(18) }, why: "shortest" },
  { text: "Fresh water, 18,5 °C", state: { kind: "fresh", temperature: 291.65 }, why: "words and a decimal comma" },
  { text: "fresh 64.4 deg F", state: { kind: "fresh", temperature: celsius(18) }, why: "Fahrenheit in two words" },
  { text: "fresh 291.15 K", state: { kind: "fresh", temperature: 291.15 }, why: "kelvin" },
  { text: "sea 12C", state: { kind: "sea", temperature: celsius(12), salinity: 35 }, why: "salinity 35 by default" },
  { text: "sea 12C 30", state: { kind: "sea", temperature: celsius(12), salinity: 30 }, why: "a bare number" },
  { text: "sea 30psu 12C", state: { kind: "sea", temperature: celsius(12), salinity: 30 }, why: "any order" },
  { text: "seawater 12 °C 30 ppt", state: { kind: "sea", temperature: celsius(12), salinity: 30 }, why: "one word" },
  { text: "sea -1C 34", state: { kind: "sea", temperature: celsius(-1), salinity: 34 }, why: "below the ice point" },
  {
    text: "air 20C 1013hPa 50%",
    state: { kind: "air", temperature: celsius(20), pressure: 101300, humidity: 0.5 },
    why: "all three",
  },
  {
    text: "air 40 % 0.98 bar 20 °C",
    state: { kind: "air", temperature: celsius(20), pressure: 98000, humidity: 0.4 },
    why: "any order and unit",
  },
  {
    text: "air 20C 1 atm",
    state: { kind: "air", temperature: celsius(20), pressure: 101325, humidity: 0.5 },
    why: "humidity 50 % by default",
  },
])("$text is understood ($why)", ({ text, state }) => {
  const found = parseFluid(text);
  expect(found.kind).toBe(state.kind);
  for (const [name, value] of Object.entries(state)) {
    if (typeof value === "number") expect(found[name as "temperature"], name).toBeCloseTo(value, 9);
  }
  expect(Object.keys(found).sort()).toEqual(Object.keys(state).sort());
});

test("both defaults are told in the help text and in the description", () => {
  expect(FLUID_TEXT_HELP).toMatch(/35 if not given.*50 % if not given/);
  expect(describeFluid(parseFluid("sea 12C"))).toBe("sea water, 12 °C, salinity 35");
  expect(describeFluid(parseFluid("air 20C 1013hPa"))).toBe("air, 20 °C, 1013 hPa, 50 % humidity");
});

test.each([
  { text: "", code: "fluid.unknown-kind", says: /no fluid was given/ },
  { text: "oil 20C", code: "fluid.unknown-kind", says: /"oil 20C" does not begin with a fluid/ },
  { text: "seaweed 20C", code: "fluid.unknown-kind", says: /seaweed/ },
  { text: "fresh", code: "fluid.no-temperature", says: /For example fresh 18 °C/ },
  { text: "fresh 18", code: "fluid.no-unit", says: /"18" has no unit.*18 °C/ },
  { text: "fresh 18C 19C", code: "fluid.given-twice", says: /a second temperature, 19C/ },
  { text: "fresh 18C 1013 hPa", code: "fluid.not-of-this-fluid", says: /"1013 hPa" is a pressure.*fresh water/ },
  { text: "sea 12C 3.5%", code: "fluid.not-of-this-fluid", says: /"3.5 %" is a humidity/ },
  { text: "sea 12 m", code: "fluid.unknown-unit", says: /"m" in "12 m"/ },
  { text: "fresh 18C warm", code: "fluid.unreadable", says: /"warm"/ },
  { text: "air 20C 50%", code: "fluid.no-pressure", says: /1013 hPa.*12 hPa for each 100 m/ },
  { text: "fresh -3C", code: "fluid.out-of-range", says: /fresh water of \u22123.000 °C.*0 to 60 °C/ },
  { text: "fresh 100C", code: "fluid.out-of-range", says: /100.0 °C.*0 to 60 °C/ },
  { text: "sea 12C 50psu", code: "fluid.out-of-range", says: /practical salinity is 50.*0 to 42/ },
  { text: "air 20C 1013 Pa", code: "fluid.out-of-range", says: /air pressure is 1013 Pa/ },
  { text: "air 20C 1013hPa 150%", code: "fluid.out-of-range", says: /relative humidity is 1.5/ },
])("$text is refused: $code", ({ text, code, says }) => {
  try {
    parseFluid(text, "--fluid");
    expect.unreachable("was accepted");
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    expect(error.problem).toMatchObject({ code, where: "--fluid" });
    expect(error.message).toMatch(says);
  }
});

describe("fluidWarnings", () => {
  test.each(["fresh 0C", "fresh 40C", "sea 0C 35", "sea 30C 10", "air 15C 1013hPa 50%", "air 27C 600hPa 50%"])(
    "%s needs no warning",
    (text) => {
      expect(fluidWarnings(parseFluid(text))).toEqual([]);
    },
  );

  test.each([
    { text: "air 30C 1013hPa 50%", code: "fluid.air-extrapolated", says: /15 to 27 °C/ },
    { text: "air 5C 1013hPa 50%", code: "fluid.air-extrapolated", says: /5.00 °C/ },
    { text: "air 20C 550hPa 50%", code: "fluid.air-extrapolated", says: /550.0 hPa/ },
    { text: "sea -1.5C 35", code: "fluid.viscosity-extrapolated", says: /0 °C and above/ },
    { text: "sea -1.5C 10", code: "fluid.below-freezing", says: /would freeze/ },
  ])("$text is warned of: $code", ({ text, code, says }) => {
    const [warning, ...more] = fluidWarnings(parseFluid(text), "run 3");
    expect(warning).toMatchObject({ code, where: "run 3", message: expect.stringMatching(says) });
    expect(more).toEqual([]);
  });
});
