import type { AdvanceFit } from "../../model/advance.ts";
import type { ReverseFit } from "../../model/reduction.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type OriginFit, withoutSpread } from "../coefficientFit.ts";
import type { FullFit } from "../fullFit.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import { withSpread } from "../plateauSpread.ts";
import { type QuadraticLaw, quadraticLawOf } from "../quadraticLaw.ts";
import { type FitSetting, powerFitOf, thrustFitOf, thrustFullFit } from "../runFits.ts";
import { unseenZero } from "../unseenZero.ts";
import { type AdvanceCurves, advanceCurves, advanceFitOf, type MovingPlateau } from "./advanceFit.ts";
import type { Grouping } from "./grouping.ts";
import { reverseFitOf } from "./reverseFit.ts";
import type { Turning } from "./turning.ts";

/** Everything that the plateaus of a run are fitted with. */
export interface RunCoefficients {
  /** Plateaus that the thrust coefficient rests on. */
  readonly used: readonly JudgedPlateau[];
  readonly thrust: FullFit;
  readonly power: FullFit | null;
  readonly law: QuadraticLaw | null;
  readonly advance: AdvanceFit | null;
  readonly reverse: ReverseFit | null;
}

/** What the coefficients are made from; `sweep`: the regression of a slow ramp, which takes the place of the plateaus. */
export interface CoefficientRequest {
  readonly grouping: Grouping;
  readonly turning: Turning;
  readonly run: FitSetting;
  readonly sweep: OriginFit | null;
}

/**
 * K_T and C_P at bollard, from plateaus at rest where there are such, else from the curves continued to J = 0; the curves;
 * and the plateaus that turn astern. Thrust falls as the advance ratio grows, so that plateaus of different advance ratio
 * are never put on one line through the origin.
 */
export function runCoefficients({ grouping, turning, run, sweep }: CoefficientRequest): RunCoefficients {
  const { bollard, curve, plateaus } = grouping;
  if (sweep && curve) throw sweepAtSpeed();
  const curves = curve && advanceCurves(curve, run);
  const atRest =
    curves && bollard.length === 0 ? continued(curve!, curves) : onPlateaus(bollard, curves, { run, sweep });
  return {
    ...atRest,
    law: tellsLaw(atRest.used, curves) ? lawOf(atRest, run) : null,
    advance: curves && advanceFitOf(curves, curve!, plateaus.filter(hasSpeed), run),
    reverse:
      turning.foundBy && grouping.reverse.length > 0
        ? reverseFitOf(grouping.reverse, atRest.thrust, turning.foundBy, run)
        : null,
  };
}

function lawOf({ used, thrust }: AtRest, { singleReadings, setting }: FitSetting): QuadraticLaw {
  const points = used.map(({ thrustPoint }) => withoutSpread(thrustPoint));
  const zeroReach = singleReadings ? 0 : (unseenZero(points, thrust.fit)?.reach ?? 0);
  const sign = Math.sign(thrust.fit.coefficient) || 1;
  return quadraticLawOf(used, sign, { singleReadings, tare: setting.thrustTare, zeroReach });
}

const hasSpeed = (plateau: JudgedPlateau): plateau is MovingPlateau =>
  plateau.advance !== null && !plateau.turnsOtherWay;

type AtRest = Pick<RunCoefficients, "used" | "thrust" | "power">;

function onPlateaus(
  plateaus: readonly JudgedPlateau[],
  curves: AdvanceCurves | null,
  { run, sweep }: Pick<CoefficientRequest, "run" | "sweep">,
): AtRest {
  const used = sweep ? plateaus : withSpread(plateaus, run.singleReadings);
  const thrust = sweep ? thrustFullFit(used, { fit: sweep }, run) : thrustFitOf(used, run);
  // A single plateau at rest makes no line of powers; the curve goes through it.
  return { used, thrust, power: powerFitOf(used, run) ?? (curves?.powerAt ? withoutPoints(curves.powerAt(0)) : null) };
}

function continued(used: readonly JudgedPlateau[], { thrustAt, powerAt }: AdvanceCurves): AtRest {
  return { used, thrust: withoutPoints(thrustAt(0)), power: powerAt && withoutPoints(powerAt(0)) };
}

/** A value of a curve is no line through the origin: what is told plateau by plateau of such a line does not hold for it. */
function withoutPoints(full: FullFit): FullFit {
  return { ...full, fit: { ...full.fit, influences: [], residuals: [] } };
}

/** Rotation rates that differ by less tell nothing of the exponent. */
const DIFFERENT = 0.02;

function tellsLaw(used: readonly JudgedPlateau[], curves: AdvanceCurves | null): boolean {
  if (!curves) return true;
  const rates = used.map(({ measured }) => measured.rotationRate.mean);
  return used.every(({ advance }) => advance!.isAtRest) && Math.max(...rates) > (1 + DIFFERENT) * Math.min(...rates);
}

function sweepAtSpeed(): InputProblem {
  return new InputProblem({
    code: "bench.sweep-at-speed",
    where: "recipe.plateaus",
    found: "the run is to be reduced as a slow ramp, and it has an advance speed",
    needed: "held steps, or a ramp at rest: at speed the thrust coefficient changes along the ramp",
    mend: "Go back to automatic plateaus, or take the advance speed away",
  });
}
