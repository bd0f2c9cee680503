import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { LogTable } from "../log/logTable.ts";
import type { Controller, Motor, Propeller } from "../model/parts.ts";
import type { Recipe } from "../model/recipe.ts";
import type { Reduction } from "../model/reduction.ts";
import type { Warning } from "../quantity/warning.ts";
import { type Blocks, blocksOf } from "./blocks.ts";
import { type Channels, channelsOf } from "./channels.ts";
import { channelChecks } from "./checks/channelChecks.ts";
import { coefficientChecks } from "./checks/coefficientChecks.ts";
import { lawChecks } from "./checks/lawChecks.ts";
import { outlierChecks } from "./checks/outlierChecks.ts";
import { powerChecks } from "./checks/powerChecks.ts";
import { runChecks } from "./checks/runChecks.ts";
import { sweepChecks } from "./checks/sweepChecks.ts";
import { tooFewPlateaus } from "./checks/tooFewPlateaus.ts";
import { fitThroughOrigin } from "./coefficientFit.ts";
import { calibrationPart, type CommonPart, densityPart, diameterPart, tarePart } from "./commonParts.ts";
import { type FullFit, fullFit, meritOf } from "./fullFit.ts";
import { type JudgedPlateau, type JudgeSetting, judged } from "./judgedPlateau.ts";
import { measurePlateau } from "./measuredPlateau.ts";
import { plateauSpansOf } from "./plateauSpans.ts";
import { quadraticLawOf } from "./quadraticLaw.ts";
import { reductionOf } from "./reductionOf.ts";
import { restOf } from "./rest.ts";
import type { RunFacts } from "./runFacts.ts";
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
 *          plateaus. Whatever is merely implausible is a warning beside the result.
 */
export function reduceRun(request: RunRequest): Reduction {
  const { facts, warnings } = workOut(request);
  const checks = [coefficientChecks, powerChecks, lawChecks, outlierChecks, sweepChecks, channelChecks, runChecks];
  return reductionOf(facts, request.source, [...warnings, ...checks.flatMap((check) => check(facts))]);
}

function workOut(request: RunRequest): { facts: RunFacts; warnings: readonly Warning[] } {
  const { table, recipe, propeller } = request;
  const channels = channelsOf(table, recipe);
  const timeline = timelineOf(table, channels.time);
  const blocks: Blocks = blocksOf(channels, timeline);
  const rest = restOf(blocks);
  const fluid = fluidProperties(recipe.fluid);
  const tareWindows = tareWindowsOf(channels, timeline, rest, recipe);
  const thrustTare = tareLineOf(channels.thrust, tareWindows.spans, timeline);
  const torqueTare = channels.torque ? tareLineOf(channels.torque, tareWindows.spans, timeline) : null;
  const spans = plateauSpansOf({ channels, timeline, blocks, rest, tare: thrustTare, recipe });
  const measured = spans.spans
    .map((span) => measurePlateau({ table, channels, timeline, thrustTare, torqueTare }, span))
    .filter((plateau) => plateau !== null && plateau.rotationRate.mean > 0) as NonNullable<ReturnType<typeof measurePlateau>>[];
  const standMotor = request.motor ? { motor: request.motor, controller: request.controller } : null;
  const powerSource = powerSourceOf(channels, standMotor);
  const setting: JudgeSetting = {
    ...{ recipe, propeller, density: fluid.density, thrustTare, torqueTare, powerSource, standMotor },
    idleCommand: rest.idleCommand,
  };
  const plateaus = judged(measured, setting);
  const used = plateaus.filter((plateau) => plateau.used);
  if (used.length < 2) throw tooFewPlateaus(table.fileName, spans, plateaus);
  const singleReadings = used.every(({ measured: { thrust } }) => thrust.samples === 1);
  const thrust = thrustFitOf(request, used, { channels, setting, singleReadings });
  const power = powerFitOf(request, used, { channels, setting, singleReadings });
  const law = quadraticLawOf(used, Math.sign(thrust.fit.coefficient) || 1, singleReadings);
  const merit = power ? meritOf(thrust, power) : null;
  return {
    facts: {
      ...{ table, recipe, propeller, fluid, channels, timeline, rest, thrustTare, spans, plateaus, used },
      ...{ thrust, power, merit, law, powerSource: power ? powerSource : null, standMotor, singleReadings },
    },
    warnings: [...timeline.warnings, ...tareWindows.warnings],
  };
}

function powerSourceOf(channels: Channels, standMotor: StandMotor | null): PowerSource | null {
  if (channels.torque) return "torque";
  const electrical = channels.electricalPower ?? (channels.voltage && channels.current);
  return standMotor && electrical ? "motorConstants" : null;
}

interface FitSetting {
  readonly channels: Channels;
  readonly setting: JudgeSetting;
  readonly singleReadings: boolean;
}

function thrustFitOf({ recipe, propeller, source }: RunRequest, used: readonly JudgedPlateau[], { channels, setting, singleReadings }: FitSetting): FullFit {
  const points = used.map(({ thrustPoint }) => thrustPoint);
  const fit = fitThroughOrigin(points, singleReadings);
  const K = fit.coefficient;
  return fullFit(fit, [
    ...calibrationPart(channels.thrust, "thrust", K, 1),
    ...calibrationPart(channels.rotationRate, "rotation rate", K, -2),
    ...diameterPart(propeller, K, -4),
    ...densityPart(recipe.fluid, K, source.sha256),
    ...tarePart("zero of the scale", `thrust-tare:${source.sha256}`, { points, fit, line: setting.thrustTare }),
  ]);
}

/** Null where shaft power is not known at two plateaus or more. */
function powerFitOf({ recipe, propeller, source }: RunRequest, used: readonly JudgedPlateau[], { channels, setting, singleReadings }: FitSetting): FullFit | null {
  const known = used.filter(({ powerPoint }) => powerPoint !== null && powerPoint.y > 0);
  if (known.length < 2) return null;
  const points = known.map(({ powerPoint }) => powerPoint!);
  const fit = fitThroughOrigin(points, singleReadings);
  const C = fit.coefficient;
  const mean = (of: "byRate" | "byElectricalPower") =>
    known.reduce((sum, { shaftPower }, i) => sum + (fit.influences[i]! * points[i]!.y * shaftPower![of]) / C, 0);
  const electrical = mean("byElectricalPower");
  const parts: CommonPart[] = [
    ...(setting.powerSource === "torque" ? calibrationPart(channels.torque, "torque", C, 1) : []),
    ...(electrical === 0 ? [] : electricalParts(channels, C * electrical)),
    ...calibrationPart(channels.rotationRate, "rotation rate", C, mean("byRate") - 3),
    ...diameterPart(propeller, C, -5),
    ...densityPart(recipe.fluid, C, source.sha256),
    ...tarePart("zero of the torque cell", `torque-tare:${source.sha256}`, { points, fit, line: setting.torqueTare }),
  ];
  return fullFit(fit, parts);
}

function electricalParts({ electricalPower, voltage, current }: Channels, C: number): CommonPart[] {
  if (electricalPower) return calibrationPart(electricalPower, "electrical power", C, 1);
  return [...calibrationPart(voltage, "voltage", C, 1), ...calibrationPart(current, "current", C, 1)];
}
