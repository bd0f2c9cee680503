import { describe, expect, test } from "vitest";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { LARGE_RESEARCH_PROPELLER } from "../../shared/propeller/blade/researchPropellers.data.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { ittcScaleEffect } from "../../shared/propeller/carryOver/ittcScaleEffect.ts";
import { reynoldsByBlades } from "../../shared/propeller/carryOver/reynoldsByBlades.ts";
import { sectionDrag } from "../../shared/propeller/section/sectionDrag.ts";
import { relativeError } from "../relative.ts";

// Holtrop & Mennen, International Shipbuilding Progress 29 (1982) 166, worked example (printed values from memory): c
// 3.065 m, t/c 0.03524, k_p 30e-6 m; ΔC_D = (2 + 4 t/c) [0.003605 - (1.89 + 1.62 log10(c/k_p))^-2.5] = 0.000956.
test("the drag change of Holtrop & Mennen's example is that of a smooth blade at Re 2e6 against a rough one of ship size", () => {
  const blade = { thicknessRatio: 0.03524, chord: 3.065 };
  const model = sectionDrag({ ...blade, reynolds: 2e6, roughness: 0 });
  const ship = sectionDrag({ ...blade, reynolds: 1e9, roughness: 30e-6 });
  // The smooth line of small blades keeps a laminar part that the ITTC line has not, up to 3 % of the drag at this
  // Reynolds number.
  expect(Math.abs(model - ship - 0.000956)).toBeLessThan(0.03 * model);
  expect(Math.abs(ship - ((2 + 4 * 0.03524) * 0.003605 - 0.000956))).toBeLessThan(2e-6);
});

// ITTC 7.5-02-03-01.4: ΔK_T = -0.3 ΔC_D (P/D)(c Z/D), ΔK_Q = 0.25 ΔC_D (c Z/D); factors from memory. The example's K_Q
// correction: 0.25 · 0.000956 · 3.065 · 4/8.
test("a drag change acts on thrust and torque by the ITTC form", () => {
  const { thrust, torque } = ittcScaleEffect({
    dragChange: 0.000956,
    pitchRatio: 1.05,
    chordRatio: 3.065 / 8,
    bladeCount: 4,
  });
  expect(relativeError(torque, 0.25 * 0.000956 * 1.5325)).toBeLessThan(1e-12);
  expect(relativeError(thrust, -0.3 * 0.000956 * 1.05 * 1.5325)).toBeLessThan(1e-12);
});

describe("a small research propeller from one Reynolds number to another", () => {
  /**
   * Static points of the DA4002 propeller of 9 x 6.75 in (D 0.2286 m, two blades, c/R 0.1785 at 0.75 R, P/D 0.80): rpm,
   * C_T, C_P. Deters, Ananda & Selig, AIAA 2014-2151; University of Illinois propeller data set, volume 2. C_T is K_T,
   * C_P is 2π K_Q. Points scatter by up to 3 %.
   */
  const SLOW = { rpm: 1547, C_T: 0.1259, C_P: 0.0884 };
  const FAST = { rpm: 5943, C_T: 0.1404, C_P: 0.0801 };
  const air = { kind: "air", temperature: 288.15, pressure: 101325, humidity: 0.5 } as const;
  const blade = { bladeCount: 2, chordRatio: 0.1785 / 2, pitchRatio: 0.8 };
  const from = ({ rpm, C_T, C_P }: typeof SLOW, to: { rpm: number }, known: object = { blade }) =>
    carryOver(
      CarryOverRequest.parse({
        measured: {
          fluid: air,
          rotationRate: rpm / 60,
          diameter: 0.2286,
          thrustCoefficient: { value: C_T, standardUncertainty: 0.01 * C_T },
          torqueCoefficient: { value: C_P / (2 * Math.PI), standardUncertainty: (0.01 * C_P) / (2 * Math.PI) },
        },
        target: { fluid: air, rotationRate: to.rpm / 60, diameter: 0.2286 },
        ...known,
      }),
    );
  const shape = { geometry: LARGE_RESEARCH_PROPELLER };

  test.each([
    { name: "up", start: SLOW, end: FAST, known: { blade }, of: "pitch and chord" },
    { name: "down", start: FAST, end: SLOW, known: { blade }, of: "pitch and chord" },
    { name: "up", start: SLOW, end: FAST, known: { shape }, of: "the measured shape of its blades" },
    { name: "down", start: FAST, end: SLOW, known: { shape }, of: "the measured shape of its blades" },
  ])("carried $name from $of its coefficients cover what was measured there", ({ start, end, known }) => {
    const { thrustCoefficient, torqueCoefficient } = from(start, end, known);
    const [low, high] = thrustCoefficient.interval95;
    expect(end.C_T).toBeGreaterThan(low);
    expect(end.C_T).toBeLessThan(high);
    const [least, most] = torqueCoefficient.interval95.map((K_Q) => 2 * Math.PI * K_Q) as [number, number];
    expect(end.C_P).toBeGreaterThan(least);
    expect(end.C_P).toBeLessThan(most);
  });
});

// Measured above: K_T rises by the factor 1.115 and K_Q falls by 0.906 from 1547 to 5943 rpm.
test("with the blades known the Reynolds factor lies between drag, trend and blade elements, which goes the measured way", () => {
  const air = { kind: "air", temperature: 288.15, pressure: 101325, humidity: 0.5 } as const;
  const [slow, fast] = [1547 / 60, 5943 / 60];
  const request = CarryOverRequest.parse({
    measured: {
      ...{ fluid: air, rotationRate: slow, diameter: 0.2286 },
      thrustCoefficient: { value: 0.1259 },
      torqueCoefficient: { value: 0.0884 / (2 * Math.PI) },
    },
    target: { fluid: air, rotationRate: fast, diameter: 0.2286 },
    shape: { geometry: LARGE_RESEARCH_PROPELLER },
  });
  const byBlades = reynoldsByBlades(request)!;
  expect(Math.abs(byBlades.thrust - 1.115)).toBeLessThan(0.08);
  expect(Math.abs(byBlades.torque - 0.906)).toBeLessThan(0.08);
  const factor = carryOver(request).factors.find(({ cause }) => cause === "reynolds")!;
  expect(factor.reason).toContain(`blade elements of these blades ${byBlades.thrust.toPrecision(4)} on K_T`);
  // A tenth of the size in the same air at a hundred times the rate has the same Reynolds number: nothing changes.
  const small = { fluid: air, rotationRate: 100 * slow, diameter: 0.02286 };
  const same = reynoldsByBlades({ ...request, target: { ...small, nozzle: false } })!;
  expect(relativeError(same.thrust, 1)).toBeLessThan(1e-9);
  expect(relativeError(same.torque, 1)).toBeLessThan(1e-9);
});

// Similarity, by hand: T of K_T 0.25 in sea water (1024.9 kg/m³ at 12 °C, 33; TEOS-10 to 0.1 kg/m³) at 3000 rpm and 100
// mm is 0.25 · 1024.9 · 2500 · 1e-4 = 64.06 N where the blade is the same and the Reynolds number stays in the range of
// one trend.
test("thrust and torque at the target follow from the coefficients there by similarity", () => {
  const result = carryOver(
    CarryOverRequest.parse({
      measured: {
        fluid: { kind: "fresh", temperature: 291.15 },
        rotationRate: 50,
        diameter: 0.076,
        thrustCoefficient: { value: 0.25 },
        torqueCoefficient: { value: 0.03 },
      },
      target: { fluid: { kind: "sea", temperature: 285.15, salinity: 33 }, rotationRate: 50, diameter: 0.1 },
      blade: { bladeCount: 3, chordRatio: 0.3, pitchRatio: 0.9 },
    }),
  );
  const { thrust, torque, shaftPower, thrustCoefficient: K_T, torqueCoefficient: K_Q } = result;
  expect(relativeError(thrust.value / K_T.value, 64.06 / 0.25)).toBeLessThan(1e-3);
  expect(relativeError(torque.value / K_Q.value, (64.06 / 0.25) * 0.1)).toBeLessThan(1e-3);
  expect(relativeError(shaftPower.value, torque.value * 2 * Math.PI * 50)).toBeLessThan(1e-12);
  // Thrust is K_T of the stand times every factor listed.
  const all = result.factors.reduce((product, factor) => product * factor.thrust, 1);
  expect(relativeError(thrust.value, 0.25 * 998.598 * 50 ** 2 * 0.076 ** 4 * all)).toBeLessThan(1e-6);
});
