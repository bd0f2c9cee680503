import fc from "fast-check";
import { expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { describeFluid, parseFluid } from "../../shared/fluid/parseFluid.ts";
import type { FluidState } from "../../shared/model/fluid.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const celsius = (min: number, max: number) => between(min, max).map((t) => t + 273.15);

const fresh = fc.record({ kind: fc.constant("fresh" as const), temperature: celsius(0, 60) });
const sea = fc.record({ kind: fc.constant("sea" as const), temperature: celsius(-2, 40), salinity: between(0, 42) });
const air = fc.record({
  kind: fc.constant("air" as const),
  temperature: celsius(-10, 45),
  pressure: between(50_000, 120_000),
  humidity: between(0, 1),
});
const anyFluid: fc.Arbitrary<FluidState> = fc.oneof(fresh, sea, air);

test("every fluid in range has finite properties, and kinematic viscosity is dynamic over density", () => {
  fc.assert(
    fc.property(anyFluid, (state) => {
      const { density, dynamicViscosity, kinematicViscosity, vapourPressure } = fluidProperties(state);
      expect(density).toBeGreaterThan(0.5);
      expect(dynamicViscosity).toBeGreaterThan(1e-5);
      expect(kinematicViscosity).toBe(dynamicViscosity / density);
      expect(vapourPressure).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(density * dynamicViscosity * vapourPressure)).toBe(true);
    }),
  );
});

test("fresh water gets lighter above 4 °C, thinner and easier to boil as it warms", () => {
  fc.assert(
    fc.property(celsius(4.1, 59), between(0.01, 1), (temperature, step) => {
      const cold = fluidProperties({ kind: "fresh", temperature });
      const warm = fluidProperties({ kind: "fresh", temperature: temperature + step });
      expect(warm.density).toBeLessThan(cold.density);
      expect(warm.dynamicViscosity).toBeLessThan(cold.dynamicViscosity);
      expect(warm.vapourPressure).toBeGreaterThan(cold.vapourPressure);
    }),
  );
});

test("salt makes water heavier, thicker and harder to boil", () => {
  fc.assert(
    fc.property(celsius(-2, 40), between(0, 41), between(0.01, 1), (temperature, salinity, step) => {
      const thin = fluidProperties({ kind: "sea", temperature, salinity });
      const salty = fluidProperties({ kind: "sea", temperature, salinity: salinity + step });
      expect(salty.density).toBeGreaterThan(thin.density);
      expect(salty.dynamicViscosity).toBeGreaterThan(thin.dynamicViscosity);
      expect(salty.vapourPressure).toBeLessThan(thin.vapourPressure);
    }),
  );
});

test("sea water without salt is fresh water within 0.01 kg/m³ of density", () => {
  fc.assert(
    fc.property(celsius(0, 40), (temperature) => {
      const salted = fluidProperties({ kind: "sea", temperature, salinity: 0 });
      expect(Math.abs(salted.density - fluidProperties({ kind: "fresh", temperature }).density)).toBeLessThan(0.01);
    }),
  );
});

test("air gets lighter with warmth and humidity and heavier with pressure", () => {
  fc.assert(
    fc.property(celsius(-10, 44), between(50_000, 119_000), between(0, 0.9), (temperature, pressure, humidity) => {
      const at = (change: Partial<Extract<FluidState, { kind: "air" }>>) =>
        fluidProperties({ kind: "air", temperature, pressure, humidity, ...change }).density;
      const density = at({});
      expect(at({ temperature: temperature + 0.5 })).toBeLessThan(density);
      expect(at({ humidity: humidity + 0.05 })).toBeLessThan(density);
      expect(at({ pressure: pressure + 100 })).toBeGreaterThan(density);
    }),
  );
});

/** As people type it: a few decimals. */
const typed = (value: number) => Number(value.toFixed(2));

test("what describeFluid says, parseFluid reads back", () => {
  const typedFluid = anyFluid.map((state): FluidState => {
    const temperature = typed(state.temperature - 273.15) + 273.15;
    if (state.kind === "fresh") return { kind: "fresh", temperature };
    if (state.kind === "sea") return { kind: "sea", temperature, salinity: typed(state.salinity) };
    return { kind: "air", temperature, pressure: Math.round(state.pressure), humidity: typed(state.humidity) };
  });
  fc.assert(
    fc.property(typedFluid, (state) => {
      const back = parseFluid(describeFluid(state));
      expect(Object.keys(back)).toEqual(Object.keys(state));
      for (const [name, value] of Object.entries(state)) {
        if (typeof value === "number") expect(back[name as "temperature"], name).toBeCloseTo(value, 6);
        else expect(back.kind).toBe(value);
      }
    }),
  );
});
