import type { CoefficientFit, Reduction } from "../../shared/model/reduction.ts";
import { staticMerit } from "../../shared/propeller/staticMerit.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";

/** What a comparison looks at in a run; everything else is filled in. Uncertainties are relative. */
export interface RunSketch {
  readonly thrustCoefficient: number;
  readonly powerCoefficient?: number;
  readonly independent?: number;
  readonly degreesOfFreedom?: number;
  /** Relative standard uncertainties by key; the same for thrust and power. */
  readonly common?: Readonly<Record<string, number>>;
  readonly diameter?: number;
  readonly density?: number;
  readonly viscosity?: number;
  readonly powerSource?: Reduction["powerSource"];
  readonly sha256?: string;
  readonly plateaus?: Reduction["plateaus"];
}

let next = 0;

/** A reduced run with the given coefficients, as `reduceRun` would hand it over. */
export function run(sketch: RunSketch): Reduction {
  const { thrustCoefficient: K_T, powerCoefficient: C_P, diameter = 0.076, density = 998.6 } = sketch;
  const id = next++;
  const exact = (value: number) => uncertain(value, 0);
  const power = C_P === undefined ? null : coefficientFit(C_P, sketch);
  const thrust = coefficientFit(K_T, sketch);
  return {
    source: { fileName: `run-${id}.csv`, sha256: sketch.sha256 ?? `sha-${id}`, rows: 100, program: "test" },
    columns: [],
    fluid: {
      density,
      dynamicViscosity: (sketch.viscosity ?? 1.05e-6) * density,
      kinematicViscosity: sketch.viscosity ?? 1.05e-6,
      vapourPressure: 2060,
    },
    diameter: uncertain(diameter, 0.0001),
    tare: { windows: [], drift: null, shape: "piecewise", driftRate: null, line: [] },
    rejected: [],
    sweep: null,
    plateaus: sketch.plateaus ?? [],
    thrustCoefficient: thrust.coefficient,
    powerCoefficient: power?.coefficient ?? null,
    torqueCoefficient: C_P === undefined ? null : exact(C_P / (2 * Math.PI)),
    powerSource: C_P === undefined ? null : (sketch.powerSource ?? "torque"),
    staticMerit: C_P === undefined ? null : exact(staticMerit({ thrustCoefficient: K_T, powerCoefficient: C_P })),
    exponent: uncertain(2, 0.02),
    intercept: uncertain(0, 0.05),
    advance: null,
    reverse: null,
    thrustFit: thrust,
    powerFit: power,
    quality: [],
    warnings: [],
  };
}

/** Runs of one variant that differ in the thrust coefficient alone. */
export function runs(name: string, coefficients: readonly number[], sketch: Partial<RunSketch> = {}) {
  return { name, reductions: coefficients.map((thrustCoefficient) => run({ ...sketch, thrustCoefficient })) };
}

function coefficientFit(
  value: number,
  { independent = 0, degreesOfFreedom = 8, common = {} }: RunSketch,
): CoefficientFit {
  const total = Math.hypot(...Object.values(common));
  const share = independent === 0 ? 1 : independent / Math.hypot(independent, total);
  return {
    coefficient: uncertain(value, value * Math.hypot(independent, total)),
    independentUncertainty: value * independent,
    commonUncertainty: value * total,
    components: Object.entries(common).map(([key, u]) => ({ name: key, key, standardUncertainty: value * u })),
    degreesOfFreedom: Math.min(degreesOfFreedom / share ** 4, 1e9),
    points: 9,
    chiSquared: 8,
    scatterRatio: 1,
  };
}
