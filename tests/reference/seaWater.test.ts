import { describe, expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { freshWaterViscosity } from "../../shared/fluid/freshWater.ts";
import {
  freezingPoint,
  seaWaterDensity,
  seaWaterVapourPressure,
  seaWaterViscosity,
} from "../../shared/fluid/seaWater.ts";
import { relativeError } from "../relative.ts";

/** ITS-90 temperature, K, of a temperature on IPTS-68 in °C: t68 = 1.00024 t90 (Saunders 1990). */
const fromIpts68 = (t68: number) => 273.15 + t68 / 1.00024;

describe("density", () => {
  // Fofonoff & Millard, Unesco Technical Papers in Marine Science 44 (1983), check values at one atmosphere.
  test.each([
    { salinity: 0, t68: 5, density: 999.96675 },
    { salinity: 0, t68: 25, density: 997.04796 },
    { salinity: 35, t68: 5, density: 1027.67547 },
    { salinity: 35, t68: 25, density: 1023.34306 },
  ])("salinity $salinity at $t68 °C is the published EOS-80 value", ({ salinity, t68, density }) => {
    const found = seaWaterDensity({ temperature: fromIpts68(t68), salinity });
    expect(Math.abs(found - density)).toBeLessThan(5.1e-6);
  });

  // The same equation evaluated independently in Python.
  test.each([
    [0, 0, 999.842594],
    [0, 4, 999.97495818],
    [0, 10, 999.7020815],
    [0, 15, 999.10157456],
    [0, 18, 998.5975831],
    [0, 20, 998.20631938],
    [0, 30, 995.65113374],
    [0, 40, 992.22040272],
    [10, 15, 1006.78392246],
    [20, 15, 1014.44336345],
    [35, 0, 1028.10633141],
    [35, 10, 1026.9524116],
    [35, 15, 1025.97275387],
    [35, 20, 1024.76300499],
    [35, 30, 1021.72863949],
  ])("salinity %d at %d °C is %d kg/m³", (salinity, t68, density) => {
    const temperature = Math.min(fromIpts68(t68), 313.15);
    expect(Math.abs(seaWaterDensity({ temperature, salinity }) - density)).toBeLessThan(1e-7);
  });

  // TEOS-10: GSW-Python 3.6.16, `gsw.rho_t_exact(gsw.SR_from_SP(SP), t, 0)`, another equation of state.
  test.each([
    [35, 0, 1028.107184575],
    [35, 10, 1026.954108291],
    [35, 15, 1025.976029444],
    [35, 20, 1024.766000015],
    [35, 25, 1023.343631388],
    [10, 15, 1006.784358241],
    [20, 15, 1014.445192748],
  ])("salinity %d at %d °C agrees with TEOS-10 within 0.01 kg/m³", (salinity, celsius, density) => {
    expect(Math.abs(seaWaterDensity({ temperature: celsius + 273.15, salinity }) - density)).toBeLessThan(0.01);
  });

  // ITTC 7.5-02-01-03 (2011), Table 3, every fifth row. The table belongs to a sea pressure of 10.1325 dbar, where sea
  // water is 0.045 kg/m³ denser than at the surface.
  test.each([
    [1, 1028.0941],
    [5, 1027.7225],
    [10, 1027.0],
    [15, 1026.021],
    [20, 1024.8103],
    [25, 1023.3873],
    [30, 1021.7694],
  ])("at %d °C the ITTC table is 0.05 kg/m³ denser, by its depth", (celsius, density) => {
    const difference = density - seaWaterDensity({ temperature: celsius + 273.15, salinity: 35 });
    expect(difference).toBeGreaterThan(0.04);
    expect(difference).toBeLessThan(0.05);
  });
});

describe("viscosity", () => {
  const fromAbsolute = (saltPerKilogram: number) => (saltPerKilogram * 1000 * 35) / 35.16504;

  // Sharqawy, Lienhard & Zubair, Desalination and Water Treatment 16 (2010) 354, eqs 22-23, evaluated independently.
  test.each([
    [0, 0, 1.791443824e-3],
    [0.01, 0, 1.820478471e-3],
    [0.035, 0, 1.905564439e-3],
    [0.04, 0, 1.924724379e-3],
    [0, 10, 1.306005898e-3],
    [0.035, 10, 1.396766251e-3],
    [0, 18, 1.052848525e-3],
    [0.01, 18, 1.073247002e-3],
    [0.035, 18, 1.130476392e-3],
    [0.04, 18, 1.142990818e-3],
    [0.035, 20, 1.076628925e-3],
    [0.035, 30, 8.606493919e-4],
    [0.04, 40, 7.159153765e-4],
  ])("with %d kg/kg of salt at %d °C is that of Sharqawy et al.", (salt, celsius, viscosity) => {
    const found = seaWaterViscosity({ temperature: celsius + 273.15, salinity: fromAbsolute(salt) });
    expect(relativeError(found, viscosity)).toBeLessThan(1e-8);
  });

  // Millero, The Sea, vol. 5 (1974): another correlation, stated 1 %.
  test.each([
    [40, 25, 9.6541e-4],
    [35, 20, 1.07177913e-3],
    [35, 15, 1.2125285e-3],
    [35, 5, 1.60481166e-3],
  ])("of salinity %d at %d °C agrees with Millero's within 1 %%", (salinity, celsius, viscosity) => {
    const found = seaWaterViscosity({ temperature: celsius + 273.15, salinity });
    expect(relativeError(found, viscosity)).toBeLessThan(0.01);
  });

  // ITTC 7.5-02-01-03 (2011), Table 3, 1 to 10 °C, printed digits; pure water there is IAPWS 2008, here Sharqawy's own.
  test.each([1.843, 1.783, 1.726, 1.671, 1.62, 1.571, 1.524, 1.48, 1.438, 1.397].map((mu, i) => [i + 1, mu] as const))(
    "at %d °C is %d mPa·s in the ITTC table, within 0.1 %%",
    (celsius, mu) => {
      const found = seaWaterViscosity({ temperature: celsius + 273.15, salinity: 35 });
      expect(relativeError(found, mu * 1e-3)).toBeLessThan(1e-3);
    },
  );

  // The two sources must meet where the salt is gone: IAPWS SR6-08 against Sharqawy eq. 23, stated 0.05 %.
  test.each([0, 10, 20, 30, 40])("without salt at %d °C is that of fresh water within 0.05 %%", (celsius) => {
    const temperature = celsius + 273.15;
    const found = seaWaterViscosity({ temperature, salinity: 0 });
    expect(relativeError(found, freshWaterViscosity(temperature))).toBeLessThan(5e-4);
  });
});

// ITTC 7.5-02-01-03 (2011), Table 3, 15 °C: 1670.9 Pa; nu at 15 and 20 °C.
test("vapour pressure and kinematic viscosity are those of the ITTC table", () => {
  const at15 = fluidProperties({ kind: "sea", temperature: 288.15, salinity: 35 });
  expect(relativeError(at15.vapourPressure, 1670.9)).toBeLessThan(1e-3);
  expect(relativeError(at15.kinematicViscosity, 1.1892e-6)).toBeLessThan(1e-3);
  const at20 = fluidProperties({ kind: "sea", temperature: 293.15, salinity: 35 });
  expect(relativeError(at20.kinematicViscosity, 1.0508e-6)).toBeLessThan(1e-3);
});

// Raoult's law of the same paper: 1 + 0.57357 S/(1000 - S) = 1.0209047276 at S = 35.16504 g/kg; pure water by IAPWS R7-97.
test("salt lowers the vapour pressure by Raoult's factor", () => {
  const found = seaWaterVapourPressure({ temperature: 288.15, salinity: 35 });
  expect(relativeError(found, 1705.744874 / 1.0209047276)).toBeLessThan(1e-8);
});

// Fofonoff & Millard, Unesco 44 (1983), p. 30: -2.588567 °C for S = 40 at 500 dbar, of which 500 * -7.53e-4 is the
// pressure; from memory.
test("sea water of salinity 40 freezes at -2.212 °C at the surface", () => {
  expect(freezingPoint(40)).toBeCloseTo(-2.588567 + 500 * 7.53e-4, 6);
});
