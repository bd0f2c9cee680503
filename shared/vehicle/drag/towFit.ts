import type { DragFit, TowData } from "../../model/vehicle/dragFit.ts";
import { known } from "../../numeric/combined.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import { positive } from "../../quantity/domain.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { type CorrelatedFit, correlatedRegression } from "./correlatedRegression.ts";
import { type FitResult, fitDocument, linearLeftOut, NO_LINEAR, noDrag, notConverged } from "./fitDocument.ts";
import { followingRows, requireColumns, requireRows } from "./fitInput.ts";
import { differentSettings, lackOfFit } from "./lackOfFit.ts";
import { speedNoise, towWarnings } from "./towSteady.ts";

/**
 * C_D A (m²) from speeds and forces of a tow.
 *
 *   F = b V|V| [+ a V],   C_D A = 2 b/ρ
 *
 * A table's points are independent; the rows of a log (`time` given) have errors that hang together, which widens the
 * interval. Noise of the speed reading makes b too small by 5 u² ΣV²/ΣV⁴, which is told and carried as doubt.
 *
 * Source   least squares; the noise in x by expanding Σ F V²/Σ V⁴ in u (as in Fuller, Measurement Error Models (1987),
 *          ch. 1, for a line).
 * Assumes  steady speed: the force holds no inertia.
 * Range    more rows than unknowns, different speeds for a linear term.
 * Throws   InputProblem `vehicle.fit-lengths`, `vehicle.fit-too-few`, `vehicle.fit-time-order`, `vehicle.fit-no-drag`.
 */
export function towFit(data: TowData): DragFit {
  const { speed, force, time } = data;
  requireColumns({ speed, force, time });
  requireRows(speed.length, data.model === "quadratic" ? 2 : 3, "tow");
  const follows = time ? followingRows(time) : speed.map(() => false);
  const plain = fitLaw(data, follows, false);
  const canTell = speed.length > 3 && differentSettings(speed.map(Math.abs)) > 2;
  const withLinear = canTell ? fitLaw(data, follows, true) : null;
  const linear = withLinear
    ? uncertain(withLinear.solution[1]!, withLinear.standardErrors[1]!, withLinear.degreesOfFreedom)
    : null;
  const isWanted = data.model === "quadraticLinear" && withLinear !== null && linear !== null;
  const isUsed = isWanted && linear.value >= 0;
  return fitDocument({
    ...described(data, isUsed ? withLinear : plain, isUsed ? 2 : 1),
    linear: isUsed ? linear : NO_LINEAR,
    linearTest: linear && { linear, pValue: pValueOf(linear, withLinear!) },
    warnings: [
      ...(isWanted && !isUsed ? [linearLeftOut("tow", linear)] : []),
      ...(plain.converged ? [] : [notConverged("tow")]),
      ...towWarnings(data, plain.solution[0]! > 0 ? plain.standardErrors[0]! / plain.solution[0]! : 0),
    ],
  });
}

/** Two-sided chance of so large a linear term if there were none; 1 where nothing scatters and none is seen. */
export function pValueOf(linear: { value: number; standardUncertainty: number }, fit: CorrelatedFit): number {
  if (linear.standardUncertainty === 0) return linear.value === 0 ? 1 : 0;
  return twoSidedPValue(linear.value / linear.standardUncertainty, fit.degreesOfFreedom);
}

function fitLaw({ speed, force }: TowData, follows: readonly boolean[], withLinear: boolean): CorrelatedFit {
  const fastest = positive(Math.max(...speed.map(Math.abs)), "fastest speed", "m/s");
  const strongest = Math.max(...force.map(Math.abs)) || 1;
  const scales = [strongest / fastest ** 2, ...(withLinear ? [strongest / fastest] : [])];
  return correlatedRegression({
    ...{ measured: force, follows, start: scales.map(() => 0), scales },
    model: ([b, a = 0]) => speed.map((V) => (b! * Math.abs(V) + a) * V),
  });
}

function described(
  data: TowData,
  fit: CorrelatedFit,
  unknowns: number,
): Omit<FitResult, "linear" | "linearTest" | "warnings"> {
  const { speed, force, time, density } = data;
  const value = (2 * fit.solution[0]!) / positive(density, "density", "kg/m³");
  if (!(value > 0))
    throw noDrag("tow", `the force does not grow with the speed: C_D A would be ${value.toPrecision(3)} m²`);
  const sizes = speed.map(Math.abs);
  const noise = time ? speedNoise(data).bias : 0;
  const scatter = (2 * fit.standardErrors[0]!) / density;
  const [ofForce, ofSpeed, ofNoise] = known(
    value * data.forceRelativeUncertainty,
    2 * value * data.speedRelativeUncertainty,
    value * noise,
  );
  return {
    method: "tow",
    value,
    doubt: [
      { cause: "scatter of the readings", standardUncertainty: scatter, degreesOfFreedom: fit.degreesOfFreedom },
      { cause: "force measurement", ...ofForce! },
      { cause: "speed measurement", ...ofSpeed! },
      { cause: "noise of the speed reading", ...ofNoise! },
    ],
    fitted: {
      across: "speed, m/s",
      up: "force, N",
      points: speed.map((x, i) => ({ x, measured: force[i]!, fitted: force[i]! - fit.residuals[i]! })),
    },
    residuals: [...fit.residuals],
    residualStandardDeviation: fit.residualStandardDeviation,
    autocorrelation: fit.autocorrelation,
    effectiveSamples: fit.effectiveSamples,
    speedRange: [Math.min(...sizes), Math.max(...sizes)],
    lackOfFit: time ? null : lackOfFit(speed, fit.residuals, unknowns),
    basis: time ? `${speed.length} rows of a tow` : `${speed.length} tow points`,
  };
}
