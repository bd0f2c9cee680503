import { expect, test } from "vitest";
import { airDensity, airVapourPressure, airViscosity } from "../../shared/fluid/air.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { freshWaterDensity, freshWaterViscosity, saturationPressure } from "../../shared/fluid/freshWater.ts";
import { seaWaterDensity, seaWaterVapourPressure, seaWaterViscosity } from "../../shared/fluid/seaWater.ts";
import { OutOfDomain } from "../../shared/quantity/problem.ts";

const sea = { temperature: 288.15, salinity: 35 };
const air = { temperature: 293.15, pressure: 101325, humidity: 0.5 };

// The numbers printed in the docstrings, to the digits printed.
test.each([
  { name: "freshWaterDensity", value: freshWaterDensity(298.15), printed: 997.047, digits: 4 },
  { name: "freshWaterViscosity", value: freshWaterViscosity(298.15), printed: 8.89997e-4, digits: 9 },
  { name: "saturationPressure", value: saturationPressure(300), printed: 3536.58941, digits: 5 },
  { name: "seaWaterDensity", value: seaWaterDensity(sea), printed: 1025.972, digits: 3 },
  { name: "seaWaterViscosity", value: seaWaterViscosity(sea), printed: 1.2203e-3, digits: 7 },
  { name: "seaWaterVapourPressure", value: seaWaterVapourPressure(sea), printed: 1670.8, digits: 1 },
  { name: "airDensity", value: airDensity(air), printed: 1.199314, digits: 6 },
  { name: "airViscosity", value: airViscosity(288.15), printed: 1.7894e-5, digits: 9 },
  { name: "airVapourPressure", value: airVapourPressure(air), printed: 1169.6, digits: 1 },
  {
    name: "fluidProperties",
    value: fluidProperties({ kind: "fresh", temperature: 291.15 }).density,
    printed: 998.598,
    digits: 3,
  },
])("the example of $name is $printed", ({ value, printed, digits }) => {
  expect(value).toBeCloseTo(printed, digits);
});

test.each([
  { what: "ice", action: () => freshWaterDensity(272.65), says: "fresh water of −0.5000 °C. Needed: 0 to 60 °C." },
  { what: "water hotter than any tank", action: () => freshWaterViscosity(334), says: /60\.85 °C/ },
  { what: "a missing temperature", action: () => freshWaterDensity(Number.NaN), says: /unknown °C/ },
  { what: "sea water below -2 °C", action: () => seaWaterDensity({ ...sea, temperature: 270 }), says: /-2 to 40 °C/ },
  { what: "brine", action: () => seaWaterViscosity({ ...sea, salinity: 43 }), says: /43.*0 to 42/ },
  {
    what: "a missing salinity",
    action: () => seaWaterDensity({ ...sea, salinity: Number.NaN }),
    says: /not a number.*0 to 42/,
  },
  { what: "arctic air", action: () => airDensity({ ...air, temperature: 260 }), says: /-10 to 45 °C/ },
  {
    what: "air of a high mountain",
    action: () => airDensity({ ...air, pressure: 40_000 }),
    says: /50000 to 120000 Pa/,
  },
  { what: "humidity in per cent", action: () => airVapourPressure({ ...air, humidity: 50 }), says: /50.*0 to 1/ },
])("$what is refused with the value found and the range allowed", ({ action, says }) => {
  expect(action).toThrow(OutOfDomain);
  expect(action).toThrow(says);
});

test.each([0, 60])("the ends of the range are inside it: %d °C", (celsius) => {
  expect(freshWaterDensity(celsius + 273.15)).toBeGreaterThan(980);
});
