import type { DragFit, TerminalData } from "../../model/vehicle/dragFit.ts";
import { autoregressiveRegression } from "../../numeric/autoregressiveRegression.ts";
import { judgedTogether, known } from "../../numeric/combined.ts";
import { lineThroughOrigin } from "../../numeric/lineThroughOrigin.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import type { UncertaintyPart } from "../../numeric/welchSatterthwaite.ts";
import { positive } from "../../quantity/domain.ts";
import { formatNumber } from "../../quantity/format.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { ALARM, fitDocument, NO_LINEAR } from "./fitDocument.ts";
import { followingRows, requireColumns, requireRows } from "./fitInput.ts";
import { lackOfFit } from "./lackOfFit.ts";
import { dragAreaOfSlope } from "./speedLaw.ts";

const FEWEST = 6;
/** A change of the speed over the stretch by more than this part is not steady. */
const STEADY = 0.02;

/**
 * C_D A (m²) from depth against time of a body that sinks or climbs by its own net weight.
 *
 *   V = dz/dt from a straight line through each steady stretch;  V = √|W| q,  C_D A = 2/(ρ q²)
 *
 * Errors of the depth that hang together widen the interval of each speed. Several runs are fitted together and judged by
 * the larger of their own doubts and the scatter between them.
 *
 * Source   |W| = ½ ρ C_D A V²; `numeric/autoregressiveRegression.ts`.
 * Assumes  terminal speed is reached; still water; upright.
 * Range    6 rows or more in each run.
 * Throws   InputProblem `vehicle.net-weight-sign`, `vehicle.mixed-directions`, `vehicle.fit-speed-not-shown`, those of a
 *          table.
 */
export function terminalFit(data: TerminalData): DragFit {
  const runs = data.runs.map((run, i) => steadyRun(run, i, ALARM / data.runs.length));
  if (new Set(runs.map(({ direction }) => direction)).size > 1) {
    throw new InputProblem({
      code: "vehicle.mixed-directions",
      where: "runs",
      found: "some runs sink and some climb",
      needed: "one direction: up and down have a C_D A each",
      mend: "Fit them apart",
    });
  }
  const roots = runs.map(({ netWeight }) => Math.sqrt(Math.abs(netWeight)));
  const { slope, scatter, residuals } = commonSlope(runs, roots);
  const [ofWeight, ofDepth] = known(data.netWeightRelativeUncertainty / 2, data.depthRelativeUncertainty);
  const area = dragAreaOfSlope({
    ...{ slope, where: "runs", density: positive(data.density, "density", "kg/m³") },
    mend: "Measure longer; look whether the body still gains speed, and say from which time on it is steady",
    doubt: [
      { cause: runs.length > 1 ? "scatter of the runs" : "scatter of the depths", ...scatter },
      { cause: "net weight", ...ofWeight! },
      { cause: "depth measurement", ...ofDepth! },
    ],
  });
  const speeds = runs.map(({ speed }) => speed);
  return fitDocument({
    ...area,
    method: "terminal",
    linear: NO_LINEAR,
    linearTest: null,
    fitted: {
      across: "time from the first steady row, s",
      up: "depth, m",
      points: runs.flatMap(({ points }) => points),
    },
    residuals: runs.flatMap((run) => run.residuals),
    residualStandardDeviation: Math.max(...runs.map(({ deviation }) => deviation)),
    autocorrelation: Math.max(...runs.map(({ autocorrelation }) => autocorrelation)),
    effectiveSamples: runs.reduce((sum, { worth }) => sum + worth, 0),
    speedRange: [Math.min(...speeds), Math.max(...speeds)],
    lackOfFit: lackOfFit(roots, residuals, 1),
    basis: `${runs.length} ${runs.length === 1 ? "run" : "runs"} at terminal speed`,
    warnings: runs.flatMap(({ warnings }) => warnings),
  });
}

interface SteadyRun {
  readonly netWeight: number;
  readonly direction: "down" | "up";
  /** Size, m/s. */ readonly speed: number;
  /** Of the speed. */ readonly doubt: UncertaintyPart;
  readonly points: { x: number; measured: number; fitted: number }[];
  readonly residuals: readonly number[];
  readonly deviation: number;
  readonly autocorrelation: number;
  readonly worth: number;
  readonly warnings: readonly Warning[];
}

/** `alarm`: chance of a false alarm that this run may take up. */
function steadyRun(run: TerminalData["runs"][number], index: number, alarm: number): SteadyRun {
  const where = `run ${index + 1}`;
  requireColumns({ time: run.time, depth: run.depth });
  const from = run.steadyFrom === undefined ? 0 : run.time.findIndex((t) => t >= run.steadyFrom!);
  const time = from < 0 ? [] : run.time.slice(from);
  requireRows(time.length, FEWEST, where);
  const follows = followingRows(time);
  const depth = run.depth.slice(from);
  const elapsed = time.map((t) => t - time[0]!);
  const ones = time.map(() => 1);
  const fit = autoregressiveRegression({ y: depth, columns: [ones, elapsed], follows });
  const velocity = fit.coefficients[1]!;
  requireDirection(run.netWeight, velocity, where);
  const squares = fit.residuals.reduce((sum, r) => sum + r * r, 0);
  const rho = fit.autocorrelation;
  return {
    netWeight: run.netWeight,
    direction: velocity > 0 ? "down" : "up",
    speed: Math.abs(velocity),
    doubt: {
      standardUncertainty: Math.max(fit.standardErrors[1]!, fit.robustStandardErrors[1]!),
      degreesOfFreedom: fit.degreesOfFreedom,
    },
    points: elapsed.map((x, i) => ({ x, measured: depth[i]!, fitted: depth[i]! - fit.residuals[i]! })),
    residuals: fit.residuals,
    deviation: Math.sqrt(squares / (time.length - 2)),
    autocorrelation: rho,
    worth: rho > 0 ? Math.max(1, (time.length * (1 - rho)) / (1 + rho)) : time.length,
    warnings: unsteady({ depth, elapsed, follows, velocity, where, alarm }),
  };
}

function requireDirection(netWeight: number, velocity: number, where: string): void {
  if (netWeight * velocity > 0) return;
  const way = velocity > 0 ? "sinks" : "climbs";
  throw new InputProblem({
    code: "vehicle.net-weight-sign",
    where,
    found: `the body ${way} at ${formatNumber(Math.abs(velocity))} m/s with a net weight of ${formatNumber(netWeight)} N`,
    needed: "a net weight (weight less buoyancy) above 0 to sink, below 0 to climb, and depths that grow downward",
    mend: "Turn the sign of the net weight or of the depths round",
  });
}

interface Stretch {
  readonly depth: readonly number[];
  readonly elapsed: readonly number[];
  readonly follows: readonly boolean[];
  readonly velocity: number;
  readonly where: string;
  readonly alarm: number;
}

/** Does the depth bend, by more than noise and more than matters? */
function unsteady({ depth, elapsed, follows, velocity, where, alarm }: Stretch): Warning[] {
  const middle = elapsed.at(-1)! / 2;
  const columns = [elapsed.map(() => 1), [...elapsed], elapsed.map((t) => (t - middle) ** 2)];
  const fit = autoregressiveRegression({ y: depth, columns, follows });
  const bend = fit.coefficients[2]!;
  const doubt = Math.max(fit.standardErrors[2]!, fit.robustStandardErrors[2]!);
  const change = (2 * bend * elapsed.at(-1)!) / velocity;
  const isSeen = doubt === 0 || twoSidedPValue(bend / doubt, fit.degreesOfFreedom) < alarm;
  if (!isSeen || Math.abs(change) < STEADY) return [];
  return [
    warning({
      code: "vehicle.fit-not-steady",
      where,
      found: `the speed ${change > 0 ? "grows" : "falls"} by ${formatNumber(100 * Math.abs(change), 2)} % over the stretch`,
      needed: "terminal speed",
      mend: "Say from which time on it is steady, or let the body go deeper",
    }),
  ];
}

/** q with its relative doubt, from one speed or from several. */
function commonSlope(runs: readonly SteadyRun[], roots: readonly number[]) {
  const speeds = runs.map(({ speed }) => speed);
  const doubts = runs.map(({ doubt }) => doubt.standardUncertainty);
  const isExact = doubts.some((u) => u === 0);
  const line = lineThroughOrigin({ x: roots, y: speeds, ...(isExact ? {} : { uncertaintyY: doubts }) });
  const promised = line.standardErrorFromUncertainty ?? 0;
  const shown = line.standardErrorFromScatter ?? 0;
  const own = judgedTogether(runs.map(({ doubt }) => doubt)).degreesOfFreedom;
  const isScattered = shown > promised;
  const scatter: UncertaintyPart = {
    standardUncertainty: (isScattered ? shown : promised) / line.slope,
    degreesOfFreedom: isScattered ? line.degreesOfFreedom : own,
  };
  return { slope: line.slope, scatter, residuals: speeds.map((V, i) => V - line.slope * roots[i]!) };
}
