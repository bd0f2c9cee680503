import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { LogTable } from "../log/logTable.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { Controller } from "../model/parts/controller.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { Propeller } from "../model/parts/propeller.ts";
import type { QualityCheck } from "../model/quality.ts";
import type { Recipe } from "../model/recipe.ts";
import type { Reduction } from "../model/reduction.ts";
import type { Warning } from "../quantity/warning.ts";
import { requireOneSpeed } from "./advance/advanceSpeed.ts";
import { groupingOf } from "./advance/grouping.ts";
import { runCoefficients } from "./advance/runCoefficients.ts";
import type { Channels } from "./channels.ts";
import { advanceChecks } from "./checks/advanceChecks.ts";
import { calibrationChecks } from "./checks/calibrationChecks.ts";
import { channelChecks } from "./checks/channelChecks.ts";
import { coefficientChecks } from "./checks/coefficientChecks.ts";
import { fluidChecks } from "./checks/fluidChecks.ts";
import { handPlateauChecks } from "./checks/handPlateauChecks.ts";
import { lawChecks } from "./checks/lawChecks.ts";
import { lowMerit } from "./checks/lowMerit.ts";
import { meterChecks } from "./checks/meterChecks.ts";
import { outlierChecks } from "./checks/outlierChecks.ts";
import { powerChecks } from "./checks/powerChecks.ts";
import { powerLawChecks } from "./checks/powerLawChecks.ts";
import { rampSweepChecks } from "./checks/rampSweepChecks.ts";
import { readingChecks } from "./checks/readingChecks.ts";
import { runChecks } from "./checks/runChecks.ts";
import { sweepChecks } from "./checks/sweepChecks.ts";
import { tooFewPlateaus } from "./checks/tooFewPlateaus.ts";
import { meritOf } from "./fullFit.ts";
import { thrustScatterOf, torqueScatterOf } from "./jointScatter.ts";
import { type JudgeSetting, judged } from "./judgedPlateau.ts";
import { type MeasuredPlateau, measurePlateau, type PlateauSource } from "./measuredPlateau.ts";
import type { PlateauSpans } from "./plateauSpans.ts";
import { requireThrust } from "./quadraticLaw.ts";
import { QUALITY_CHECKS } from "./quality/qualityCard.ts";
import { reductionOf } from "./reductionOf.ts";
import type { RunFacts } from "./runFacts.ts";
import { searchedRun } from "./searchedRun.ts";
import type { PowerSource, StandMotor } from "./shaftPowerOf.ts";
import { sweepFitOf } from "./sweepFit.ts";
import { type TareLine, withRunningWander } from "./tareLine.ts";

export interface RunRequest {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  /** Motor and controller on the stand: shaft power where no torque was measured. */
  readonly motor?: Motor | undefined;
  readonly controller?: Controller | undefined;
  /** Instruments the channels were measured with; each takes the place of the typed correction of its channel. */
  readonly instruments?: UsedInstruments | undefined;
  readonly source: { readonly sha256: string; readonly program: string };
}

/**
 * Thrust and power coefficients of a propeller from a log of its bench run, with their uncertainty and everything that
 * looks wrong.
 *
 * Channels to SI, zero from the rests, plateaus, means, T = K_T ρ n² D⁴ and P = C_P ρ n³ D⁵ through the origin,
 * what all plateaus share, checks against physics.
 *
 * Assumes  far from walls and surface. Plateaus at speed go on curves against the advance ratio, K_T(J) and C_P(J), and
 *          those that turn astern are reduced apart.
 * Throws   InputProblem `bench.*` where the log can not give a result: a missing column, no pole pairs, fewer than two
 *          plateaus; OutOfDomain for a fluid state that has no properties. Whatever is merely implausible is a
 *          warning beside the result.
 */
export function reduceRun(request: RunRequest): Reduction {
  return toTheEnd(reduceInSteps(request));
}

/** Share of the work that is done when the spans are found, the plateaus measured, the line fitted. */
const SHARES = { searched: 0.3, measured: 0.7, fitted: 0.75 };

/**
 * The same in steps of some tens of milliseconds for a million rows, so that a thread can tell how far it is, the share
 * done from 0 to 1, and can hear that nobody waits any more. Steps that were done are not done again the next time.
 */
export function* reduceInSteps(request: RunRequest): Generator<number, Reduction> {
  const { facts, warnings } = yield* workOut(request);
  const checks = [
    coefficientChecks,
    powerChecks,
    lowMerit,
    readingChecks,
    lawChecks,
    powerLawChecks,
    handPlateauChecks,
    ...(facts.sweep ? [rampSweepChecks] : facts.law ? [outlierChecks, sweepChecks] : []),
    channelChecks,
    meterChecks,
    runChecks,
    fluidChecks,
    calibrationChecks,
    advanceChecks,
  ];
  const told: Warning[] = [...warnings];
  for (const check of checks) {
    told.push(...check(facts));
    yield SHARES.fitted;
  }
  const quality: QualityCheck[] = [];
  for (const check of QUALITY_CHECKS) {
    quality.push(check(facts));
    yield SHARES.fitted + ((1 - SHARES.fitted) * quality.length) / QUALITY_CHECKS.length;
  }
  return reductionOf(facts, request.source, { warnings: told, quality });
}

/** Everything that is worked out of a run on the way to its reduction. Throws as `reduceRun`. */
export function runFactsOf(request: RunRequest): RunFacts {
  return toTheEnd(workOut(request)).facts;
}

function toTheEnd<T>(steps: Generator<number, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function* workOut(request: RunRequest): Generator<number, { facts: RunFacts; warnings: readonly Warning[] }> {
  const { table, recipe, propeller } = request;
  const { channels, timeline, rest, tareWindows, ...found } = yield* searchedRun(request);
  yield SHARES.searched;
  const fluid = fluidProperties(recipe.fluid);
  const source = { table, channels, timeline, thrustTare: found.thrustTare, torqueTare: found.torqueTare };
  const { measured, spans } = yield* measuredPlateaus(source, found.spans);
  const { thrustTare, torqueTare } = tareDoubts(found, measured);
  const standMotor = request.motor ? { motor: request.motor, controller: request.controller } : null;
  const powerSource = powerSourceOf(channels, standMotor);
  const setting: JudgeSetting = {
    ...{ recipe, propeller, density: fluid.density, thrustTare, torqueTare, powerSource, standMotor },
    idleCommand: rest.idleCommand,
  };
  requireOneSpeed(channels, recipe);
  const { plateaus: judgedPlateaus, turning } = judged(measured, setting);
  const candidates = judgedPlateaus.filter((plateau) => plateau.used);
  if (candidates.length < 2) throw tooFewPlateaus(table.fileName, spans, judgedPlateaus);
  requireThrust(candidates);
  const grouping = groupingOf(judgedPlateaus, table.fileName);
  const { plateaus } = grouping;
  const singleReadings = candidates.every((plateau) => plateau.measured.thrust.samples === 1);
  const run = { channels, recipe, propeller, setting, singleReadings, run: request.source.sha256 };
  const sweeps = recipe.plateaus.mode === "sweep" && timeline.kind === "clock";
  const { diameter } = propeller;
  const sweep = sweeps ? sweepFitOf(source, candidates, { density: fluid.density, diameter }) : null;
  yield SHARES.measured;
  const coefficients = runCoefficients({ grouping, turning, run, sweep: sweep?.fit ?? null });
  const { thrust, power } = coefficients;
  return {
    facts: {
      ...{ table, recipe, propeller, fluid, channels, timeline, rest, thrustTare, spans, plateaus },
      ...coefficients,
      ...{ merit: power && meritOf(thrust, power), standMotor, singleReadings, sweep },
      powerSource: power ? powerSource : null,
    },
    warnings: [...timeline.warnings, ...tareWindows.warnings, ...grouping.warnings],
  };
}

/** Zeros with their scatter as the plateaus show it. */
function tareDoubts(
  { thrustTare, torqueTare }: { readonly thrustTare: TareLine; readonly torqueTare: TareLine | null },
  measured: readonly MeasuredPlateau[],
) {
  const torques = measured.flatMap((plateau) => torqueScatterOf(plateau) ?? []);
  return {
    thrustTare: withRunningWander(thrustTare, measured.map(thrustScatterOf)),
    torqueTare: torqueTare && withRunningWander(torqueTare, torques),
  };
}

/** Means of every span; one that turns out to hold no reading or no rotation joins the rejected ones. */
function* measuredPlateaus(source: PlateauSource, spans: PlateauSpans) {
  const measured: MeasuredPlateau[] = [];
  const rejected = [...spans.rejected];
  const { searched, measured: allMeasured } = SHARES;
  for (const [i, span] of spans.spans.entries()) {
    yield searched + ((allMeasured - searched) * i) / spans.spans.length;
    const plateau = measurePlateau(source, span);
    if (plateau) thrustScatterOf(plateau);
    if (plateau && plateau.rotationRate.mean > 0) measured.push(plateau);
    else rejected.push({ span, because: plateau ? "at rest" : "without readings" });
  }
  return { measured, spans: { ...spans, rejected } };
}

function powerSourceOf(channels: Channels, standMotor: StandMotor | null): PowerSource | null {
  if (channels.torque) return "torque";
  const electrical = channels.electricalPower ?? (channels.voltage && channels.current);
  return standMotor && electrical ? "motorConstants" : null;
}
