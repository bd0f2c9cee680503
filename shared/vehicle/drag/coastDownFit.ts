import type { CoastDownData, DragFit } from "../../model/vehicle/dragFit.ts";
import { known } from "../../numeric/combined.ts";
import { straightLine } from "../../numeric/straightLine.ts";
import { nonNegative, positive } from "../../quantity/domain.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem, OutOfDomain } from "../../quantity/problem.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { slowed } from "../motion/closedForms.ts";
import { type CorrelatedFit, correlatedRegression } from "./correlatedRegression.ts";
import { type FitResult, fitDocument, linearLeftOut, NO_LINEAR, noDrag, notConverged } from "./fitDocument.ts";
import { followingRows, requireColumns, requireRows } from "./fitInput.ts";
import { pValueOf } from "./towFit.ts";

/** Rows that the start of the search needs in each third of the log. */
const FEWEST = 6;

/**
 * C_D A (m²) from speed or distance against time after the thrust went off.
 *
 *   M dV/dt = −b V² [− a V],   k = b/M,   C_D A = 2 M k/ρ,   M = m + m_a
 *
 * The unknowns are the start speed, k, with a linear term a/M, and for distances where the first one lies. Errors that
 * hang together widen the interval; the doubt of the mass and of the added mass is carried in full: k alone is measured.
 *
 * Source   closed forms of `motion/closedForms.ts` by least squares; JCGM 100:2008, 5.
 * Assumes  still water, no thrust (a propeller that windmills brakes too), constant added mass.
 * Range    6 rows or more.
 * Throws   InputProblem `vehicle.coast-speeds-up`, `vehicle.fit-no-drag`, those of a table; OutOfDomain for a mass not
 *          greater than 0.
 */
export function coastDownFit(data: CoastDownData): DragFit {
  const { time, values } = data;
  requireColumns({ time, [data.measured]: values });
  requireRows(time.length, FEWEST, "coast-down");
  const follows = followingRows(time);
  const start = roughSlowing(data);
  const plain = fitLaw(data, follows, start, false);
  const withLinear = tryLinear(data, follows, start);
  const M = totalMass(data);
  const linear = withLinear
    ? uncertain(
        M * withLinear.solution[2]!,
        Math.hypot(M * withLinear.standardErrors[2]!, massDoubt(data) * withLinear.solution[2]!),
        withLinear.degreesOfFreedom,
      )
    : null;
  const isWanted = data.model === "quadraticLinear" && withLinear !== null && linear !== null;
  const isUsed = isWanted && linear.value >= 0 && withLinear.solution[1]! > 0;
  const used = isUsed ? withLinear : plain;
  return fitDocument({
    ...described(data, used),
    linear: isUsed ? linear : NO_LINEAR,
    linearTest: linear && { linear, pValue: pValueOf(linear, withLinear!) },
    warnings: [
      ...(isWanted && !isUsed ? [linearLeftOut("coast-down", linear)] : []),
      ...(used.converged ? [] : [notConverged("coast-down")]),
      ...massWarnings(data),
    ],
  });
}

interface Rough {
  readonly speed: number;
  /** 1/m */ readonly slowing: number;
}

/** Start speed and k from the first and the last third; throws where the body does not slow down. */
function roughSlowing(data: CoastDownData): Rough {
  const third = Math.floor(data.time.length / 3);
  const [early, late] = [meanSpeed(data, 0, third), meanSpeed(data, data.time.length - third, data.time.length)];
  if (!(early.speed > 0)) {
    throw new InputProblem({
      code: "vehicle.coast-speeds-up",
      where: "coast-down",
      found: `the body starts with ${formatNumber(early.speed)} m/s`,
      needed: `a ${data.measured} that ${data.measured === "speed" ? "starts above 0" : "grows from the start"}`,
      mend: "Turn the sign round, or count the distance from the start",
    });
  }
  if (!(late.speed < early.speed)) {
    throw new InputProblem({
      code: "vehicle.coast-speeds-up",
      where: "coast-down",
      found: `the body goes from ${formatNumber(early.speed)} to ${formatNumber(late.speed)} m/s without thrust`,
      needed: "a speed that falls",
      mend: "Cut the log to after the thrust went off; look for a current, a slope of the line or swapped columns",
    });
  }
  const slowest = Math.max(late.speed, 0.02 * early.speed);
  const slowing = (1 / slowest - 1 / early.speed) / (late.at - early.at);
  const passed = early.at - data.time[0]!;
  // 1/V grows by k t: back to the first row, or not quite where that would be beyond infinity.
  return { slowing, speed: 1 / Math.max(1 / early.speed - slowing * passed, 0.2 / early.speed) };
}

function meanSpeed({ time, values, measured }: CoastDownData, from: number, to: number) {
  const t = time.slice(from, to);
  const at = t.reduce((sum, one) => sum + one, 0) / t.length;
  const some = values.slice(from, to);
  if (measured === "speed") return { at, speed: some.reduce((sum, V) => sum + V, 0) / some.length };
  if (t.length < 3) return { at, speed: (some.at(-1)! - some[0]!) / (t.at(-1)! - t[0]!) };
  return { at, speed: straightLine({ x: t, y: some }).slope };
}

/** Unknowns: start speed, k, [a/M], [where the first distance lies]; the last is last so that the others keep places. */
function fitLaw(data: CoastDownData, follows: readonly boolean[], rough: Rough, withLinear: boolean): CorrelatedFit {
  const { time, values, measured } = data;
  const elapsed = time.map((t) => t - time[0]!);
  const start = [
    rough.speed,
    rough.slowing,
    ...(withLinear ? [0] : []),
    ...(measured === "distance" ? [values[0]!] : []),
  ];
  const scales = [
    ...[rough.speed, rough.slowing],
    ...(withLinear ? [rough.slowing * rough.speed] : []),
    ...(measured === "distance" ? [0.1 * rough.speed * elapsed.at(-1)!] : []),
  ];
  const model = (unknowns: readonly number[]) => {
    const slowing = { quadratic: unknowns[1]!, linear: withLinear ? unknowns[2]! : 0 };
    if (measured === "speed") return elapsed.map((t) => slowed(slowing, unknowns[0]!, t).speed);
    return elapsed.map((t) => unknowns.at(-1)! + slowed(slowing, unknowns[0]!, t).distance);
  };
  return correlatedRegression({ measured: values, follows, model, start, scales });
}

/** Null where the log can not tell a linear term from the quadratic one. */
function tryLinear(data: CoastDownData, follows: readonly boolean[], rough: Rough): CorrelatedFit | null {
  try {
    const fit = fitLaw(data, follows, rough, true);
    return fit.converged && [...fit.solution, ...fit.standardErrors].every(Number.isFinite) ? fit : null;
  } catch (error) {
    if (error instanceof OutOfDomain) return null;
    throw error;
  }
}

const totalMass = ({ mass, addedMass }: CoastDownData) =>
  positive(mass.value, "mass", "kg") + nonNegative(addedMass?.value ?? 0, "added mass", "kg");

const massDoubt = ({ mass, addedMass }: CoastDownData) =>
  Math.hypot(mass.standardUncertainty, addedMass?.standardUncertainty ?? 0);

function described(data: CoastDownData, fit: CorrelatedFit): Omit<FitResult, "linear" | "linearTest" | "warnings"> {
  const { time, values, measured, mass, addedMass } = data;
  const perMass = (2 * fit.solution[1]!) / positive(data.density, "density", "kg/m³");
  const value = perMass * totalMass(data);
  if (!(value > 0)) throw noDrag("coast-down", `C_D A would be ${value.toPrecision(3)} m²`);
  const [ofMass, ofAdded, ofValues] = known(
    perMass * mass.standardUncertainty,
    perMass * (addedMass?.standardUncertainty ?? 0),
    value * data.valuesRelativeUncertainty,
  );
  const scatter = (2 * totalMass(data) * fit.standardErrors[1]!) / data.density;
  return {
    method: "coastDown",
    value,
    doubt: [
      { cause: "scatter of the readings", standardUncertainty: scatter, degreesOfFreedom: fit.degreesOfFreedom },
      { cause: "mass", ...ofMass! },
      { cause: "added mass", ...ofAdded! },
      { cause: `${measured} measurement`, ...ofValues! },
    ],
    fitted: {
      across: "time, s",
      up: measured === "speed" ? "speed, m/s" : "distance, m",
      points: time.map((x, i) => ({ x, measured: values[i]!, fitted: values[i]! - fit.residuals[i]! })),
    },
    residuals: [...fit.residuals],
    residualStandardDeviation: fit.residualStandardDeviation,
    autocorrelation: fit.autocorrelation,
    effectiveSamples: fit.effectiveSamples,
    speedRange: speedsOf(data, fit),
    lackOfFit: null,
    basis: `${time.length} rows of a coast-down`,
  };
}

/** Least and greatest speed on the fitted curve, m/s. */
function speedsOf({ time, measured, values }: CoastDownData, { solution, residuals }: CorrelatedFit): [number, number] {
  if (measured === "speed") {
    const fitted = values.map((V, i) => V - residuals[i]!);
    return [Math.max(0, Math.min(...fitted)), Math.max(...fitted)];
  }
  const linear = solution.length === 4 ? solution[2]! : 0;
  const slowing = { quadratic: solution[1]!, linear };
  return [slowed(slowing, solution[0]!, time.at(-1)! - time[0]!).speed, solution[0]!];
}

function massWarnings({ addedMass }: CoastDownData): Warning[] {
  if (addedMass !== undefined) return [];
  return [
    warning({
      code: "vehicle.coast-added-mass",
      where: "coast-down",
      found: "no added mass is given and it is taken as 0, so that C_D A comes out too small by its part of the mass",
      needed: "the mass of water that the body drags along",
      mend: "Give it in kg, or a spheroid of like size; it is 5 to 50 % of the displaced mass along, and up to all of it across",
    }),
  ];
}
