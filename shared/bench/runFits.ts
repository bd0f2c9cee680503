import type { Propeller } from "../model/parts/propeller.ts";
import type { ColumnRole, Recipe } from "../model/recipe.ts";
import { calibrationParts } from "./calibrationParts.ts";
import type { Channel, Channels } from "./channels.ts";
import { fitThroughOrigin, type OriginFit } from "./coefficientFit.ts";
import { type CommonPart, calibrationPart, densityPart, diameterPart, tarePart } from "./commonParts.ts";
import { type FullFit, fullFit } from "./fullFit.ts";
import type { JudgedPlateau, JudgeSetting } from "./judgedPlateau.ts";
import { motorParts } from "./motorParts.ts";
import type { SampleMean } from "./sampleMean.ts";
import type { TareLine } from "./tareLine.ts";
import { unseenZeroPart } from "./unseenZero.ts";

/** Less than any stand can measure, W. */
const NO_POWER = 1e-9;

/** What the fits of one run are made from. */
export interface FitSetting {
  readonly channels: Channels;
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  /** Hash of the log: what only this run has. */
  readonly run: string;
  readonly setting: JudgeSetting;
  readonly singleReadings: boolean;
}

/** Thrust against ρ n² D⁴. */
export function thrustFitOf(used: readonly JudgedPlateau[], run: FitSetting): FullFit {
  const points = used.map(({ thrustPoint }) => thrustPoint);
  const fit = fitThroughOrigin(points, run.singleReadings);
  return thrustFullFit(used, { fit, more: run.singleReadings ? [] : unseenZeroPart(points, fit, run.run) }, run);
}

/** A fit of plateaus before what they share is added. */
export interface PlateauFit {
  readonly fit: OriginFit;
  /** Change of the coefficient by a relative change of the advance ratio of each plateau; absent: all are at rest. */
  readonly advancePulls?: readonly number[] | undefined;
  /** Parts that only this fit has. */
  readonly more?: readonly CommonPart[];
}

/** A fit of thrusts with the whole of its doubt. */
export function thrustFullFit(used: readonly JudgedPlateau[], plateauFit: PlateauFit, run: FitSetting): FullFit {
  const { channels, recipe, propeller, setting } = run;
  const { fit } = plateauFit;
  const points = used.map(({ thrustPoint }) => thrustPoint);
  const K = fit.coefficient;
  const parts = calibrationsOf(used, K);
  // Part of each plateau in the coefficient; they sum to it, whatever the doubt in the rotation rate does to the slope.
  const weighed = points.map(({ y }, i) => fit.influences[i]! * y);
  const all = weighed.reduce((sum, part) => sum + part, 0);
  // Where a curve crosses nought the parts cancel, and there is nothing to bring them up to.
  const shares = weighed.map((part) => (all === 0 ? part : (part / all) * K));
  const advance = advancePartsOf(used, plateauFit, run);
  return fullFit(fit, [
    ...parts(channels.thrust, "thrust", (_, i) => shares[i]!, setting.thrustTare),
    ...parts(channels.rotationRate, "rotation rate", (_, i) => -2 * shares[i]! - advance.pull(i)),
    ...diameterPart(propeller, K || 1, K ? -4 - advance.whole / K : -advance.whole),
    ...advance.parts,
    ...densityPart(recipe.fluid, K, run.run),
    ...tarePart("zero of the scale", `thrust-tare:${run.run}`, { points, fit, line: setting.thrustTare }),
    ...(plateauFit.more ?? []),
  ]);
}

/** Shaft power against ρ n³ D⁵. Null where shaft power is not known at two plateaus or more. */
export function powerFitOf(used: readonly JudgedPlateau[], run: FitSetting): FullFit | null {
  const known = used.filter(({ powerPoint }) => powerPoint !== null && powerPoint.y > NO_POWER);
  if (known.length < 2) return null;
  const points = known.map(({ powerPoint }) => powerPoint!);
  return powerFullFit(known, { fit: fitThroughOrigin(points, run.singleReadings) }, run);
}

/** A fit of shaft powers, all of them known, with the whole of its doubt. */
export function powerFullFit(known: readonly JudgedPlateau[], plateauFit: PlateauFit, run: FitSetting): FullFit {
  const { channels, recipe, propeller, setting } = run;
  const { fit } = plateauFit;
  const points = known.map(({ powerPoint }) => powerPoint!);
  const C = fit.coefficient;
  const advance = advancePartsOf(known, plateauFit, run);
  const calibrated = calibrationsOf(known, C);
  const pullOf =
    (power: number): PullOf =>
    (_, i) =>
      power * fit.influences[i]! * points[i]!.y;
  const electrical: PullOf = (plateau, i) => pullOf(plateau.shaftPower!.byElectricalPower)(plateau, i);
  const parts: CommonPart[] = [
    ...(setting.powerSource === "torque" ? calibrated(channels.torque, "torque", pullOf(1), setting.torqueTare) : []),
    ...(channels.electricalPower
      ? calibrated(channels.electricalPower, "electrical power", electrical)
      : [
          ...calibrated(channels.voltage, "voltage", electrical),
          ...calibrated(channels.current, "current", electrical),
        ]),
    ...calibrated(
      channels.rotationRate,
      "rotation rate",
      (plateau, i) => pullOf(plateau.shaftPower!.byRate - 3)(plateau, i) - advance.pull(i),
    ),
    ...(setting.powerSource === "motorConstants" && setting.standMotor
      ? motorParts(setting.standMotor, byConstantsOf(known, fit.influences))
      : []),
    ...diameterPart(propeller, C || 1, C ? -5 - advance.whole / C : -advance.whole),
    ...advance.parts,
    ...densityPart(recipe.fluid, C, run.run),
    ...tarePart("zero of the torque cell", `torque-tare:${run.run}`, {
      points,
      fit,
      line: setting.torqueTare,
      unit: "N·m",
    }),
  ];
  return fullFit(fit, parts);
}

/** What the calibration of the advance speed brings; rotation rate and diameter move the advance ratio the other way. */
function advancePartsOf(plateaus: readonly JudgedPlateau[], { advancePulls }: PlateauFit, run: FitSetting) {
  const pull = (i: number) => advancePulls?.[i] ?? 0;
  const whole = plateaus.reduce((sum, _, i) => sum + pull(i), 0);
  return { pull, whole, parts: speedPart(run, whole) };
}

/** Part of a number that changes by `change` for a relative change of all advance speeds. */
export function speedPart({ channels, recipe }: Pick<FitSetting, "channels" | "recipe">, change: number): CommonPart[] {
  if (channels.advanceSpeed) return calibrationPart(channels.advanceSpeed, "advance speed", 1, change);
  const relative = recipe.advanceSpeeds?.relativeUncertainty ?? 0;
  if (relative * change === 0) return [];
  const name = "stated advance speed";
  return [{ name, key: `stated-advance-speed:${relative}`, change: relative * change, degreesOfFreedom: Infinity }];
}

/** Change of the coefficient by each constant of the motor. */
function byConstantsOf(plateaus: readonly JudgedPlateau[], influences: readonly number[]): number[] {
  const each = plateaus.map(({ shaftPower }, i) => shaftPower!.byConstants.map((by) => by * influences[i]!));
  return each[0]!.map((_, j) => each.reduce((sum, row) => sum + row[j]!, 0));
}

/** Change of a coefficient by a relative change of one channel at one plateau. */
type PullOf = (plateau: JudgedPlateau, index: number) => number;

/** Parts of a coefficient that the calibration of a channel brings; `tare`: what took its zero off, if anything did. */
function calibrationsOf(plateaus: readonly JudgedPlateau[], coefficient: number) {
  return (channel: Channel | undefined, words: string, pullOf: PullOf, tare: TareLine | null = null): CommonPart[] => {
    if (channel === undefined) return [];
    const pulls = plateaus.map((plateau, i) => ({
      value: meanOf(plateau, channel.role),
      pull: pullOf(plateau, i),
    }));
    return calibrationParts(channel, words, {
      pulls,
      coefficient: coefficient || 1,
      tared: tare !== null && tare.windows.length > 0,
    });
  };
}

function meanOf({ measured }: JudgedPlateau, role: ColumnRole): number {
  const means: Partial<Record<ColumnRole, SampleMean | null>> = {
    ...{ thrust: measured.thrust, torque: measured.torque, rotationRate: measured.rotationRate },
    ...{ voltage: measured.voltage, current: measured.current, electricalPower: measured.electricalPower },
  };
  return means[role]?.mean ?? 0;
}
