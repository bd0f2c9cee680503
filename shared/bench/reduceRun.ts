import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { LogTable } from "../log/logTable.ts";
import type { UsedInstruments } from "../model/instrument.ts";
import type { Controller, Motor, Propeller } from "../model/parts.ts";
import type { Recipe } from "../model/recipe.ts";
import type { Reduction } from "../model/reduction.ts";
import type { Warning } from "../quantity/warning.ts";
import { blocksOf } from "./blocks.ts";
import { type Channels, channelsOf } from "./channels.ts";
import { calibrationChecks } from "./checks/calibrationChecks.ts";
import { channelChecks } from "./checks/channelChecks.ts";
import { coefficientChecks } from "./checks/coefficientChecks.ts";
import { lawChecks } from "./checks/lawChecks.ts";
import { outlierChecks } from "./checks/outlierChecks.ts";
import { powerChecks } from "./checks/powerChecks.ts";
import { readingChecks } from "./checks/readingChecks.ts";
import { runChecks } from "./checks/runChecks.ts";
import { sweepChecks } from "./checks/sweepChecks.ts";
import { tooFewPlateaus } from "./checks/tooFewPlateaus.ts";
import { meritOf } from "./fullFit.ts";
import { type JudgeSetting, judged } from "./judgedPlateau.ts";
import { type MeasuredPlateau, measurePlateau, type PlateauSource } from "./measuredPlateau.ts";
import { type PlateauSpans, plateauSpansOf } from "./plateauSpans.ts";
import { quadraticLawOf, requireThrust } from "./quadraticLaw.ts";
import { reductionOf } from "./reductionOf.ts";
import { restOf } from "./rest.ts";
import type { RunFacts } from "./runFacts.ts";
import { powerFitOf, thrustFitOf } from "./runFits.ts";
import type { PowerSource, StandMotor } from "./shaftPowerOf.ts";
import { tareLineOf } from "./tareLine.ts";
import { tareWindowsOf } from "./tareWindows.ts";
import { timelineOf } from "./timeline.ts";

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
 * Assumes  the propeller stands still in the fluid (bollard), far from walls and surface.
 * Throws   InputProblem `bench.*` where the log can not give a result: a missing column, no pole pairs, fewer than two
 *          plateaus; OutOfDomain for a fluid state that has no properties. Whatever is merely implausible is a
 *          warning beside the result.
 */
export function reduceRun(request: RunRequest): Reduction {
  const { facts, warnings } = workOut(request);
  const checks = [
    coefficientChecks,
    powerChecks, readingChecks,
    lawChecks,
    outlierChecks,
    sweepChecks,
    channelChecks,
    runChecks,
    calibrationChecks,
  ];
  return reductionOf(facts, request.source, [...warnings, ...checks.flatMap((check) => check(facts))]);
}

/** From the table to the spans of steady running. */
function searched({ table, recipe, instruments }: RunRequest) {
  const channels = channelsOf(table, recipe, instruments);
  const timeline = timelineOf(table, channels.time);
  const blocks = blocksOf(channels, timeline);
  const rest = restOf(blocks);
  const tareWindows = tareWindowsOf(channels, timeline, rest, recipe);
  const thrustTare = tareLineOf(channels.thrust, tareWindows.spans, timeline);
  const torqueTare = channels.torque ? tareLineOf(channels.torque, tareWindows.spans, timeline) : null;
  const spans = plateauSpansOf({ channels, timeline, blocks, rest, tare: thrustTare, recipe });
  return { channels, timeline, rest, tareWindows, thrustTare, torqueTare, spans };
}

function workOut(request: RunRequest): { facts: RunFacts; warnings: readonly Warning[] } {
  const { table, recipe, propeller } = request;
  const { channels, timeline, rest, tareWindows, thrustTare, torqueTare, ...found } = searched(request);
  const fluid = fluidProperties(recipe.fluid);
  const { measured, spans } = measuredPlateaus({ table, channels, timeline, thrustTare, torqueTare }, found.spans);
  const standMotor = request.motor ? { motor: request.motor, controller: request.controller } : null;
  const powerSource = powerSourceOf(channels, standMotor);
  const setting: JudgeSetting = {
    ...{ recipe, propeller, density: fluid.density, thrustTare, torqueTare, powerSource, standMotor },
    idleCommand: rest.idleCommand,
  };
  const plateaus = judged(measured, setting);
  const used = plateaus.filter((plateau) => plateau.used);
  if (used.length < 2) throw tooFewPlateaus(table.fileName, spans, plateaus);
  requireThrust(used);
  const singleReadings = used.every((plateau) => plateau.measured.thrust.samples === 1);
  const run = { channels, recipe, propeller, setting, singleReadings, run: request.source.sha256 };
  const thrust = thrustFitOf(used, run);
  const power = powerFitOf(used, run);
  const law = quadraticLawOf(used, Math.sign(thrust.fit.coefficient) || 1, singleReadings);
  return {
    facts: {
      ...{ table, recipe, propeller, fluid, channels, timeline, rest, thrustTare, spans, plateaus, used },
      ...{ thrust, power, law, merit: power && meritOf(thrust, power), standMotor, singleReadings },
      powerSource: power ? powerSource : null,
    },
    warnings: [...timeline.warnings, ...tareWindows.warnings],
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
