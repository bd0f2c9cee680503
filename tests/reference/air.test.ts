import { expect, test } from "vitest";
import { airDensity, airVapourPressure, airViscosity } from "../../shared/fluid/air.ts";
import { relativeError } from "../relative.ts";

// CIPM-2007 (Picard et al., Metrologia 45 (2008) 149), 400 µmol/mol of carbon dioxide, evaluated independently in Python.
test.each([
  [20, 101325, 0.5, 1.199313895474],
  [15, 101325, 0, 1.225521344728],
  [20, 101325, 0, 1.204557341628],
  [20, 101325, 1, 1.194087244111],
  [25, 100000, 0.5, 1.161823771438],
  [10, 97325.3, 0.4, 1.195694417868],
  [30, 101325, 0.6, 1.153677463118],
])("air of %d °C, %d Pa and humidity %d weighs %d kg/m³", (celsius, pressure, humidity, density) => {
  expect(relativeError(airDensity({ temperature: celsius + 273.15, pressure, humidity }), density)).toBeLessThan(1e-9);
});

// A mass-metrology handbook table, 10 °C, 730 mmHg, 40 %: 1.19569 kg/m³, as quoted in the public tests of an R package.
test("air at 10 °C, 730 mmHg and 40 % is that of a handbook table", () => {
  const pressure = 730 * 133.322387415;
  expect(Math.abs(airDensity({ temperature: 283.15, pressure, humidity: 0.4 }) - 1.19569)).toBeLessThan(1e-5);
});

// ISO 2533:1975 standard atmosphere at sea level: 1.2250 kg/m³ at 15 °C and 101325 Pa, another gas law and no humidity.
test("dry air at sea level is within 0.05 % of the standard atmosphere", () => {
  expect(relativeError(airDensity({ temperature: 288.15, pressure: 101325, humidity: 0 }), 1.225)).toBeLessThan(5e-4);
});

// ICAO Doc 7488 / US Standard Atmosphere 1976, Sutherland's law, evaluated independently; printed 1.7894e-5 at 15 °C.
test.each([
  [-10, 1.666149030575e-5],
  [0, 1.716079266246e-5],
  [10, 1.765153410686e-5],
  [15, 1.789380278078e-5],
  [20, 1.813405882149e-5],
  [25, 1.83723423589e-5],
  [30, 1.860869242491e-5],
  [40, 1.907574296656e-5],
])("the viscosity of air at %d °C is that of the standard atmosphere", (celsius, viscosity) => {
  expect(relativeError(airViscosity(celsius + 273.15), viscosity)).toBeLessThan(1e-11);
});

// Saturation pressure of water: IAPWS R7-97 at 20 °C, 2339.214767 Pa, against CIPM's own formula.
test("the vapour in air of 50 % holds half the saturation pressure of water", () => {
  const found = airVapourPressure({ temperature: 293.15, pressure: 101325, humidity: 0.5 });
  expect(relativeError(found, 2339.214767 / 2)).toBeLessThan(1e-4);
});
