import { describe, expect, test } from "vitest";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { openWaterEfficiency } from "../../shared/propeller/openWaterEfficiency.ts";
import { propellerOf, recipeOf, SOURCE, tableOf } from "../unit/benchTable.ts";

/**
 * Measured in a wind tunnel: purpose-made two-bladed propeller of 9 in diameter, pitch 6.75 in, at 5028 to 5064 rpm.
 * R. W. Deters, G. K. Ananda & M. S. Selig, Reynolds number effects on the performance of small-scale propellers, AIAA
 * 2014-2151; numbers from the open propeller data set of the University of Illinois, volume 2 (Brandt, Deters, Ananda,
 * Dantsker & Selig). Columns: J, C_T, C_P, eta; K_T = C_T and K_Q = C_P/2π.
 */
const MEASURED = [
  [0.124, 0.1302, 0.0766, 0.211],
  [0.1864, 0.1249, 0.0747, 0.312],
  [0.2505, 0.1196, 0.0742, 0.404],
  [0.3121, 0.1115, 0.0728, 0.478],
  [0.3744, 0.1025, 0.0706, 0.544],
  [0.4367, 0.093, 0.0678, 0.599],
  [0.5008, 0.0826, 0.0643, 0.643],
  [0.5658, 0.0712, 0.0595, 0.676],
  [0.6254, 0.0574, 0.0524, 0.685],
  [0.6894, 0.0452, 0.0459, 0.678],
  [0.751, 0.0325, 0.038, 0.642],
  [0.8107, 0.0199, 0.0288, 0.56],
  [0.8762, 0.0036, 0.0155, 0.204],
  [0.9145, -0.0056, 0.0076, -0.679],
] as const;
/** Between the two last points, on a straight line. */
const ZERO_THRUST = 0.8762 + (0.0036 / (0.0036 + 0.0056)) * (0.9145 - 0.8762);

const DIAMETER = 0.2286;
const AIR = { kind: "air", temperature: 288.15, pressure: 101325, humidity: 0 } as const;

/** The table turned into readings of a stand: newton, newton-metre, rpm and m/s, one row a plateau after a rest. */
function windTunnel(rows: readonly (readonly number[])[] = MEASURED, rpm = 5064) {
  const { density: rho } = fluidProperties(AIR);
  const n = rpm / 60;
  const [V, T, Q] = [
    rows.map(([J]) => J! * n * DIAMETER),
    rows.map(([, C_T]) => C_T! * rho * n ** 2 * DIAMETER ** 4),
    rows.map(([, , C_P]) => (C_P! / (2 * Math.PI)) * rho * n ** 2 * DIAMETER ** 5),
  ];
  return tableOf({ thrust: [0, ...T], torque: [0, ...Q], rate: [0, ...rows.map(() => rpm)], speed: [0, ...V] });
}

const USES = [
  ["thrust", "N"],
  ["torque", "N·m"],
  ["rotationRate", "rpm"],
  ["advanceSpeed", "m/s"],
] as const;

const reduceTunnel = (more: object = {}, table = windTunnel()) =>
  reduceRun({
    table,
    recipe: recipeOf(USES, { fluid: AIR, ...more }),
    propeller: propellerOf({ diameter: DIAMETER }),
    source: SOURCE,
  });

describe("a measured research propeller comes out as printed", () => {
  const reduction = reduceTunnel({ advanceOrder: 4 });
  const advance = reduction.advance!;

  test.each(MEASURED.map(([J, C_T, C_P, eta], i) => ({ J, C_T, C_P, eta, i })))(
    "at J $J: C_T $C_T, C_P $C_P, efficiency $eta",
    ({ J, C_T, C_P, eta, i }) => {
      const point = advance.points[i]!;
      expect(point.advanceRatio.value).toBeCloseTo(J, 9);
      expect(point.thrustCoefficient.value).toBeCloseTo(C_T, 9);
      expect(point.powerCoefficient!.value).toBeCloseTo(C_P, 9);
      expect(point.torqueCoefficient!.value).toBeCloseTo(C_P / (2 * Math.PI), 9);
      // Printed to three digits, from unrounded coefficients: half a last digit of each of the three comes in.
      const rounding = 5e-4 + Math.abs(eta) * (5e-5 / Math.abs(C_T) + 5e-5 / C_P);
      expect(Math.abs(point.efficiency!.value - eta)).toBeLessThan(rounding);
    },
  );

  test("zero thrust lies where the table changes sign", () => {
    const { advanceRatio, isExtrapolated } = advance.zeroThrust!;
    expect(isExtrapolated).toBe(false);
    // The straight line between the points holds to their scatter, some 2 % of C_T at rest over the slope of 0.24.
    expect(Math.abs(advanceRatio.value - ZERO_THRUST)).toBeLessThan(0.01);
    expect(advanceRatio.interval95[0]).toBeLessThan(ZERO_THRUST);
    expect(advanceRatio.interval95[1]).toBeGreaterThan(ZERO_THRUST);
  });

  test("the best efficiency is the best of the table, near J 0.63", () => {
    const { efficiency, advanceRatio, isAtEdge } = advance.peak!;
    expect(isAtEdge).toBe(false);
    expect(Math.abs(efficiency.value - 0.685)).toBeLessThan(0.012);
    expect(Math.abs(advanceRatio.value - 0.6254)).toBeLessThan(0.03);
  });

  test("the bollard coefficient is continued, and that is told", () => {
    expect(advance.bollard).toBe("extrapolated");
    expect(reduction.exponent).toBeNull();
    expect(reduction.warnings.map(({ code }) => code)).toContain("bench.bollard-continued");
    // The same data set, static: C_T 0.1381 at 4930 rpm. A curve that starts at J 0.12 misses it by a few parts in 100.
    expect(Math.abs(reduction.thrustCoefficient.value / 0.1381 - 1)).toBeLessThan(0.05);
  });
});

/**
 * Carlton, Marine Propellers and Propulsion; polynomials of Oosterveld & van Oossanen, International Shipbuilding Progress
 * 22 (1975) 251: Wageningen B4-70, pitch ratio 1.0: K_T, 10 K_Q at J 0, 0.2 to 1.0, evaluated from the published
 * coefficients with Python; zero thrust at J 1.0618, best efficiency 0.6946 at J 0.842.
 */
const WAGENINGEN = {
  rows: [
    [0, 0.4547, 0.6754],
    [0.2, 0.3919, 0.5942],
    [0.4, 0.3142, 0.4921],
    [0.6, 0.2256, 0.3727],
    [0.8, 0.1297, 0.2397],
    [1, 0.0307, 0.0969],
  ],
  zeroThrust: 1.0618,
  peak: { efficiency: 0.6946, advanceRatio: 0.842 },
};

describe("a Wageningen B4-70 put through the stand", () => {
  const rows = WAGENINGEN.rows.map(([J, K_T, tenK_Q]) => [J!, K_T!, (tenK_Q! / 10) * 2 * Math.PI]);
  const reduction = reduceTunnel({ advanceOrder: 3 }, windTunnel(rows, 3000));

  test("has its zero thrust, told as continued, and its best efficiency", () => {
    const { zeroThrust, peak } = reduction.advance!;
    expect(zeroThrust!.isExtrapolated).toBe(true);
    // The polynomial of the series has terms up to J³; four printed digits remain.
    expect(Math.abs(zeroThrust!.advanceRatio.value - WAGENINGEN.zeroThrust)).toBeLessThan(1e-3);
    expect(Math.abs(peak!.efficiency.value - WAGENINGEN.peak.efficiency)).toBeLessThan(1e-3);
    expect(Math.abs(peak!.advanceRatio.value - WAGENINGEN.peak.advanceRatio)).toBeLessThan(5e-3);
  });

  test("takes its bollard coefficients from the plateau at rest", () => {
    expect(reduction.advance!.bollard).toBe("plateaus");
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.4547, 9);
    expect(reduction.torqueCoefficient!.value).toBeCloseTo(0.06754, 4);
  });

  test("the efficiency at J 0.8 is the 0.6890 of the series", () => {
    const efficiency = openWaterEfficiency({
      ...{ advanceRatio: 0.8, thrustCoefficient: 0.1297, torqueCoefficient: 0.02397 },
    });
    // Half a last digit of K_T and K_Q as printed: 4e-4 and 2e-4 of themselves.
    expect(Math.abs(efficiency / 0.689 - 1)).toBeLessThan(6e-4);
    expect(Math.abs(reduction.advance!.points[4]!.efficiency!.value / 0.689 - 1)).toBeLessThan(6e-4);
  });
});
