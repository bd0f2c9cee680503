import type { Plateau, Reduction } from "../../shared/model/reduction.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";

/** Density and diameter under which ρ n² D⁴ is the square of the rotation rate times 0.1 exactly. */
export const DENSITY = 1000;
export const DIAMETER = 0.1;

export interface Made {
  readonly thrustCoefficient?: number;
  readonly powerCoefficient?: number | null;
  readonly rates?: readonly number[];
  readonly leftOut?: readonly number[];
  readonly fileName?: string;
}

/** A reduction with round numbers: thrust K_T 0.1 n² N, shaft power C_P 0.01 n³ W. */
export function reductionOf(made: Made = {}): Reduction {
  const {
    thrustCoefficient = 0.2,
    powerCoefficient = 0.1,
    rates = [10, 20, 30],
    leftOut = [],
    fileName = "a.csv",
  } = made;
  const K = uncertain(thrustCoefficient, 0.01 * thrustCoefficient);
  const C = powerCoefficient === null ? null : uncertain(powerCoefficient, 0.02 * powerCoefficient);
  const coefficientFit = (coefficient: typeof K, keys: readonly [string, number][]) => ({
    coefficient,
    independentUncertainty: 0.006 * coefficient.value,
    commonUncertainty: 0.008 * coefficient.value,
    components: keys.map(([key, share]) => ({
      name: `${key} of the stand`,
      key,
      standardUncertainty: share * coefficient.value,
    })),
    degreesOfFreedom: rates.length - 1,
    points: rates.length,
    chiSquared: 2,
    scatterRatio: 1,
  });
  return {
    source: { fileName, sha256: fileName.padEnd(64, "0"), rows: 12345, program: "bollard-bench 0.1.0" },
    columns: [{ column: 0, role: "thrust", unit: "gf", header: "Thrust (gf)" }],
    fluid: { density: DENSITY, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2300 },
    diameter: uncertain(DIAMETER, 1e-4),
    tare: {
      windows: [{ start: 0, end: 5, thrust: uncertain(0.1, 0.01) }],
      drift: null,
      shape: "piecewise",
      driftRate: null,
      line: [
        { at: 0, thrust: 0.1 },
        { at: 40, thrust: 0.1 },
      ],
    },
    rejected: [],
    sweep: null,
    plateaus: rates.map((rate, index) => plateauAt(rate, index, { K, C, leftOut: leftOut.includes(index) })),
    thrustCoefficient: K,
    powerCoefficient: C,
    torqueCoefficient: C === null ? null : uncertain(C.value / (2 * Math.PI), C.standardUncertainty / (2 * Math.PI)),
    powerSource: C === null ? null : "torque",
    staticMerit: C === null ? null : uncertain(thrustCoefficient ** 1.5 / (C.value * Math.sqrt(Math.PI / 2)), 0.01),
    exponent: uncertain(2.01, 0.02),
    intercept: uncertain(0.5, 0.1),
    advance: null,
    reverse: null,
    thrustFit: coefficientFit(K, [
      ["calibration", 0.006],
      ["diameter", 0.008],
    ]),
    powerFit: C === null ? null : coefficientFit(C, [["diameter", 0.008]]),
    quality: [],
    warnings: [],
  };
}

function plateauAt(
  rate: number,
  index: number,
  { K, C, leftOut }: { K: ReturnType<typeof uncertain>; C: ReturnType<typeof uncertain> | null; leftOut: boolean },
): Plateau {
  const thrust = K.value * 0.1 * rate ** 2;
  const power = C === null ? null : uncertain(C.value * 0.01 * rate ** 3, 0.1);
  return {
    start: 10 * index + 10,
    end: 10 * index + 18,
    duration: 8,
    firstLine: 100 * index + 101,
    lastLine: 100 * index + 180,
    span: { start: 10 * index + 10, end: 10 * index + 18 },
    foundBy: "command",
    settlingTime: 0.5,
    samples: 80,
    effectiveSamples: 40,
    command: 0.2 * (index + 1),
    rotationRate: uncertain(rate, 0.05),
    thrust: uncertain(thrust, 0.05),
    thrustTare: 0.1,
    tareUncertainty: 0.01,
    torque: null,
    voltage: null,
    current: null,
    electricalPower: power === null ? null : uncertain(power.value / 0.75, 0.2),
    shaftPower: power,
    thrustCoefficient: K,
    powerCoefficient: C,
    momentumLimit: power === null ? null : 2 * thrust,
    used: !leftOut,
    leftOutBecause: leftOut ? "still settling" : null,
    residual: leftOut ? null : 0.5 * (index - 1),
  };
}

/** A stored run of a made log. */
export function runOf(id: string, change: Partial<Run> = {}): StoredDocument<Run> {
  return {
    id,
    version: 1,
    updatedAt: "2026-11-25T12:00:00Z",
    document: {
      name: id,
      purpose: "propeller",
      variant: "",
      mounting: "",
      file: { name: `${id}.csv`, sha256: "0".repeat(64), size: 1 },
      recipe: {
        columns: [],
        fluid: { kind: "fresh", temperature: 291.15 },
        corrections: {},
        tare: { mode: "zeroThrottle" },
        plateaus: { mode: "automatic" },
        leftOut: [],
      },
      confirmed: true,
      note: "",
      ...change,
    },
  };
}
