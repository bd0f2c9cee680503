import type { DragFit, TimedRunData } from "../../model/vehicle/dragFit.ts";
import { known } from "../../numeric/combined.ts";
import { positive } from "../../quantity/domain.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { type CorrelatedFit, correlatedRegression } from "./correlatedRegression.ts";
import { fitDocument, NO_LINEAR, notConverged } from "./fitDocument.ts";
import { requireRows } from "./fitInput.ts";
import { differentSettings, lackOfFit } from "./lackOfFit.ts";
import { dragAreaOfSlope } from "./speedLaw.ts";
import { pValueOf } from "./towFit.ts";

/**
 * C_D A (m²) from steady speeds over a course under known thrust.
 *
 *   V = q √T [± c],   C_D A = 2/(ρ q²),   c the current along the course where both ways were run
 *
 * Source   T = ½ ρ C_D A V²; least squares on the speeds, which is where the scatter is.
 * Assumes  steady speed from the first mark on; thrust known at that speed, what the hull takes off it allowed for.
 * Range    two runs or more (three with a current).
 * Throws   InputProblem `vehicle.fit-too-few`, `vehicle.run-no-speed`, `vehicle.fit-speed-not-shown`.
 */
export function timedRunFit(data: TimedRunData): DragFit {
  const { runs, density } = data;
  const ways = new Set(runs.map(({ way }) => way));
  const hasCurrent = ways.has("there") && ways.has("back") && !ways.has(undefined);
  requireRows(runs.length, hasCurrent ? 3 : 2, "timed runs");
  const speeds = runs.map(speedOf);
  const roots = runs.map(({ thrust }, i) => Math.sqrt(positive(thrust, `thrust of run ${i + 1}`, "N")));
  const signs = runs.map(({ way }) => (way === "there" ? 1 : -1));
  const rough = Math.max(...speeds) / Math.max(...roots);
  const fit = courseFit(speeds, roots, hasCurrent ? signs : null, rough);
  const slope = fit.solution[0]!;
  const relative = fit.standardErrors[0]! / slope;
  const [ofThrust, ofSpeed] = known(data.thrustRelativeUncertainty / 2, data.speedRelativeUncertainty);
  const area = dragAreaOfSlope({
    ...{
      slope,
      where: "timed runs",
      density: positive(density, "density", "kg/m³"),
      mend: "Run the course more often",
    },
    doubt: [
      { cause: "scatter of the runs", standardUncertainty: relative, degreesOfFreedom: fit.degreesOfFreedom },
      { cause: "thrust", ...ofThrust! },
      { cause: "speed measurement", ...ofSpeed! },
    ],
  });
  return fitDocument({
    ...area,
    method: "timedRuns",
    linear: NO_LINEAR,
    linearTest: linearTest(data, speeds, hasCurrent ? signs : null, rough),
    fitted: {
      across: "thrust, N",
      up: "speed, m/s",
      points: speeds.map((measured, i) => ({
        x: runs[i]!.thrust,
        measured,
        fitted: measured - fit.residuals[i]!,
      })),
    },
    residuals: [...fit.residuals],
    residualStandardDeviation: fit.residualStandardDeviation,
    autocorrelation: 0,
    effectiveSamples: runs.length,
    speedRange: [Math.min(...speeds), Math.max(...speeds)],
    lackOfFit: hasCurrent ? null : lackOfFit(roots, fit.residuals, 1),
    basis: `${runs.length} timed runs`,
    warnings: [...(fit.converged ? [] : [notConverged("timed runs")]), ...(hasCurrent ? [] : [oneWay()])],
  });
}

/** q, and the current where `signs` tell the ways. */
function courseFit(
  speeds: readonly number[],
  roots: readonly number[],
  signs: readonly number[] | null,
  slope: number,
): CorrelatedFit {
  return correlatedRegression({
    ...{ measured: speeds, follows: speeds.map(() => false), start: [slope, ...(signs ? [0] : [])] },
    scales: [slope, ...(signs ? [Math.max(...speeds)] : [])],
    model: ([q, c = 0]) => roots.map((root, i) => q! * root + c * (signs?.[i] ?? 0)),
  });
}

function speedOf({ speed, distance, duration }: TimedRunData["runs"][number], index: number): number {
  if (speed !== undefined) return positive(speed, `speed of run ${index + 1}`, "m/s");
  if (distance !== undefined && duration !== undefined) {
    const way = positive(distance, `distance of run ${index + 1}`, "m");
    return way / positive(duration, `duration of run ${index + 1}`, "s");
  }
  throw new InputProblem({
    code: "vehicle.run-no-speed",
    where: `run ${index + 1}`,
    found: "neither a speed nor a distance with its duration",
    needed: "one of them",
    mend: "Give the length of the course and the time over it",
  });
}

/** Linear term that makes V = 2 T/[a + √(a² + 4 b T)] fit best; null with fewer than three thrusts. */
function linearTest(
  { runs }: TimedRunData,
  speeds: readonly number[],
  signs: readonly number[] | null,
  slope: number,
): DragFit["linearTest"] {
  const thrusts = runs.map(({ thrust }) => thrust);
  if (differentSettings(thrusts) < 3 || runs.length < (signs ? 5 : 4)) return null;
  const quadratic = 1 / slope ** 2;
  const top = Math.max(...speeds);
  const fit = correlatedRegression({
    ...{ measured: speeds, follows: speeds.map(() => false) },
    start: [quadratic, 0, ...(signs ? [0] : [])],
    scales: [quadratic, quadratic * top, ...(signs ? [top] : [])],
    // A root below 0 has no speed: infinity turns the search back.
    model: ([b, a, c = 0]) =>
      thrusts.map((T, i) => (2 * T) / (a! + Math.sqrt(Math.max(0, a! * a! + 4 * b! * T))) + c * (signs?.[i] ?? 0)),
  });
  const linear = uncertain(fit.solution[1]!, fit.standardErrors[1]!, fit.degreesOfFreedom);
  return fit.converged ? { linear, pValue: pValueOf(linear, fit) } : null;
}

function oneWay(): Warning {
  return warning({
    code: "vehicle.fit-one-way",
    where: "timed runs",
    found: "the runs are not told apart by their way, so that a current is in the speed",
    needed: "runs there and back",
    mend: "Run the course both ways and say which run went which way; 5 % of current is 10 % of C_D A",
  });
}
