import { describe, expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { freshWaterDensity, freshWaterViscosity, saturationPressure } from "../../shared/fluid/freshWater.ts";
import { relativeError } from "../relative.ts";

/**
 * `density`, `viscosity`: IAPWS SR6-08(2011), evaluated with the Python package iapws 1.5.2 (`_Liquid`), an independent
 * implementation. `density95`: IAPWS-95 at 0.1 MPa. `viscosity2008`: IAPWS R12-08. `saturation`: IAPWS R7-97 region 4,
 * Pa. All from iapws 1.5.2.
 */
const TABLE = [
  [0, 999.8423832, 1.79178243e-3, 999.8424114, 1.791759151e-3, 611.212677],
  [1, 999.9011435, 1.731050494e-3, 999.9011684, 1.731024003e-3, 657.088049],
  [2, 999.9423184, 1.673545867e-3, 999.9423386, 1.673517914e-3, 705.987906],
  [4, 999.9742058, 1.567320139e-3, 999.9742135, 1.56729385e-3, 813.549384],
  [5, 999.9659812, 1.518198342e-3, 999.9659821, 1.518174749e-3, 872.574861],
  [10, 999.7018639, 1.305901728e-3, 999.7018369, 1.305900859e-3, 1228.183869],
  [15, 999.1020301, 1.13754782e-3, 999.1020028, 1.137568289e-3, 1705.744874],
  [18, 998.5980363, 1.052647329e-3, 998.5980218, 1.05267475e-3, 2064.656528],
  [20, 998.2065464, 1.001567265e-3, 998.2065435, 1.001596551e-3, 2339.214767],
  [25, 997.0470134, 8.899967737e-4, 997.047039, 8.900226738e-4, 3169.746855],
  [30, 995.6488239, 7.972062023e-4, 995.6488633, 7.972218268e-4, 4246.688341],
  [35, 994.032698, 7.191214497e-4, 994.0327296, 7.191255337e-4, 5628.620144],
  [40, 992.2157634, 6.527334742e-4, 992.2157713, 6.527285604e-4, 7384.427487],
] as const;

describe("fresh water at 0.1 MPa", () => {
  test.each(TABLE)("at %d °C density, viscosity and saturation pressure are those of IAPWS", (...row) => {
    const [celsius, density, viscosity, density95, viscosity2008, saturation] = row;
    const T = celsius + 273.15;
    expect(relativeError(freshWaterDensity(T), density)).toBeLessThan(1e-10);
    expect(relativeError(freshWaterViscosity(T), viscosity)).toBeLessThan(1e-8);
    expect(relativeError(saturationPressure(T), saturation)).toBeLessThan(2e-9);
    // IAPWS SR6-08 states 1e-6 for density; for viscosity the release of 2008 itself is good to 1 %.
    expect(relativeError(freshWaterDensity(T), density95)).toBeLessThan(1e-6);
    expect(relativeError(freshWaterViscosity(T), viscosity2008)).toBeLessThan(1e-4);
  });
});

// IAPWS R7-97(2012), Table 35: saturation pressure at 300 K, MPa.
test("the saturation pressure at 300 K is the one printed for checking programs", () => {
  expect(relativeError(saturationPressure(300), 0.353658941e-2 * 1e6)).toBeLessThan(1e-9);
});

// Murphy & Koop, Q. J. R. Meteorological Society 131 (2005) 1539, eq. 10, undercooled water at 271.15 K; formula from
// memory, evaluated with Python: 527.8895 Pa, stated to 0.05 %.
test("below 0 °C the saturation pressure follows that of undercooled water", () => {
  expect(relativeError(saturationPressure(271.15), 527.8895)).toBeLessThan(5e-4);
});

/**
 * Measured. Masui, Fujii & Takenaka, Determination of the absolute density of water at 16 °C and 0.101325 MPa,
 * Metrologia 32 (1995/96) 333: 998.9468 kg/m³, combined standard uncertainty 0.0006 kg/m³ (abstract). The step from
 * 0.1 to 0.101325 MPa adds 0.0006 kg/m³ (compressibility 4.6e-10 per Pa).
 */
test("at 16 °C the density agrees with the measured one within its 95 % interval", () => {
  const compressed = freshWaterDensity(289.15) * (1 + 4.6e-10 * 1325);
  expect(Math.abs(compressed - 998.9468)).toBeLessThan(2 * 0.0006);
});

// ITTC 7.5-02-01-03 (2011), Fresh Water and Seawater Properties, Table 1: printed digits.
test.each([
  [15, 999.1026, 1.1386e-6, 1705.8],
  [20, 998.2072, 1.0034e-6, null],
])("at %d °C the printed values of the ITTC table come out", (celsius, density, viscosity, vapour) => {
  const found = fluidProperties({ kind: "fresh", temperature: celsius + 273.15 });
  // The table is for 0.101325 MPa, which is 0.0006 kg/m³ denser.
  expect(Math.abs(found.density - density)).toBeLessThan(0.0007);
  expect(Math.abs(found.kinematicViscosity - viscosity)).toBeLessThan(0.00006e-6);
  if (vapour !== null) expect(Math.abs(found.vapourPressure - vapour)).toBeLessThan(0.1);
});
