import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { LogTable } from "../log/logTable.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { Controller, Motor, Propeller } from "../model/parts.ts";
import type { Recipe } from "../model/recipe.ts";
import type { Reduction } from "../model/reduction.ts";
import type { Warning } from "../quantity/warning.ts";
import { requireOneSpeed } from "./advance/advanceSpeed.ts";
import { groupingOf } from "./advance/grouping.ts";
import { runCoefficients } from "./advance/runCoefficients.ts";
import { blocksOf } from "./blocks.ts";
import { type Channels, channelsKey, channelsOf } from "./channels.ts";
import { advanceChecks } from "./checks/advanceChecks.ts";
import { calibrationChecks } from "./checks/calibrationChecks.ts";
import { channelChecks } from "./checks/channelChecks.ts";
import { coefficientChecks } from "./checks/coefficientChecks.ts";
import { handPlateauChecks } from "./checks/handPlateauChecks.ts";
import { lawChecks } from "./checks/lawChecks.ts";
import { outlierChecks } from "./checks/outlierChecks.ts";
import { powerChecks } from "./checks/powerChecks.ts";
import { rampSweepChecks } from "./checks/rampSweepChecks.ts";
import { readingChecks } from "./checks/readingChecks.ts";
import { runChecks } from "./checks/runChecks.ts";
import { sweepChecks } from "./checks/sweepChecks.ts";
import { tooFewPlateaus } from "./checks/tooFewPlateaus.ts";
import { meritOf } from "./fullFit.ts";
import { type JudgeSetting, judged } from "./judgedPlateau.ts";
import { type MeasuredPlateau, measurePlateau, type PlateauSource } from "./measuredPlateau.ts";
import { type PlateauSpans, plateauSpansOf } from "./plateauSpans.ts";
import { requireThrust } from "./quadraticLaw.ts";
import { reductionOf } from "./reductionOf.ts";
import { identityOf, remembered } from "./remembered.ts";
import { restOf } from "./rest.ts";
import type { RunFacts } from "./runFacts.ts";
import type { PowerSource, StandMotor } from "./shaftPowerOf.ts";
import { sweepFitOf } from "./sweepFit.ts";
import { type TareLine, tareLineOf, withRunningWander } from "./tareLine.ts";
import { tareWindowsOf } from "./tareWindows.ts";
import { type Timeline, timelineOf } from "./timeline.ts";

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
  const { facts, warnings } = workOut(request);
  const checks = [
    coefficientChecks,
    powerChecks,
    readingChecks,
    lawChecks,
    handPlateauChecks,
    ...(facts.sweep ? [rampSweepChecks] : facts.law ? [outlierChecks, sweepChecks] : []),
    channelChecks,
    runChecks,
    calibrationChecks,
    advanceChecks,
  ];
  return reductionOf(facts, request.source, [...warnings, ...checks.flatMap((check) => check(facts))]);
}

/** Everything that is worked out of a run on the way to its reduction. Throws as `reduceRun`. */
export function runFactsOf(request: RunRequest): RunFacts {
  return workOut(request).facts;
}

/** From the table to the spans of steady running; looked for again only when a channel, the tare or the plateaus change. */
function searched({ table, recipe, instruments }: RunRequest) {
  const channels = channelsOf(table, recipe, instruments);
  const timeline = timelineOf(table, channels.time);
  const dependsOn = [table.fileName, identityOf(timeline), channelsKey(channels), recipe.tare, recipe.plateaus];
  const found = remembered(channels.thrust.raw, { stage: "search", dependsOn }, () =>
    searchedIn(channels, timeline, recipe),
  );
  return { channels, timeline, ...found };
}

function searchedIn(channels: Channels, timeline: Timeline, recipe: Recipe) {
  const blocks = blocksOf(channels, timeline);
  const rest = restOf(blocks);
  const tareWindows = tareWindowsOf(channels, timeline, rest, recipe);
  const shape = recipe.tare.mode === "none" ? undefined : recipe.tare.shape;
  const thrustTare = tareLineOf(channels.thrust, tareWindows.spans, timeline, shape);
  const torqueTare = channels.torque ? tareLineOf(channels.torque, tareWindows.spans, timeline, shape) : null;
  const spans = plateauSpansOf({ channels, timeline, blocks, rest, tare: thrustTare, recipe });
  return { rest, tareWindows, thrustTare, torqueTare, spans };
}

function workOut(request: RunRequest): { facts: RunFacts; warnings: readonly Warning[] } {
  const { table, recipe, propeller } = request;
  const { channels, timeline, rest, tareWindows, ...found } = searched(request);
  const fluid = fluidProperties(recipe.fluid);
  const source = { table, channels, timeline, thrustTare: found.thrustTare, torqueTare: found.torqueTare };
  const { measured, spans } = measuredPlateaus(source, found.spans);
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
  const torques = measured.flatMap(({ torque }) => torque ?? []);
  return {
    thrustTare: withRunningWander(
      thrustTare,
      measured.map(({ thrust }) => thrust),
    ),
    torqueTare: torqueTare && withRunningWander(torqueTare, torques),
  };
}

/** Means of every span; one that turns out to hold no reading or no rotation joins the rejected ones. */
function measuredPlateaus(source: PlateauSource, spans: PlateauSpans) {
  const measured: MeasuredPlateau[] = [];
  const rejected = [...spans.rejected];
  for (const span of spans.spans) {
    const plateau = measurePlateau(source, span);
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
