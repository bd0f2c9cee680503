import type { Propeller } from "../model/parts.ts";
import type { Recipe } from "../model/recipe.ts";
import type { Channels } from "./channels.ts";
import { fitThroughOrigin } from "./coefficientFit.ts";
import { type CommonPart, calibrationPart, densityPart, diameterPart, tarePart } from "./commonParts.ts";
import { type FullFit, fullFit } from "./fullFit.ts";
import type { JudgedPlateau, JudgeSetting } from "./judgedPlateau.ts";

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
  const { channels, recipe, propeller, setting, singleReadings } = run;
  const points = used.map(({ thrustPoint }) => thrustPoint);
  const fit = fitThroughOrigin(points, singleReadings);
  const K = fit.coefficient;
  return fullFit(fit, [
    ...calibrationPart(channels.thrust, "thrust", K, 1),
    ...calibrationPart(channels.rotationRate, "rotation rate", K, -2),
    ...diameterPart(propeller, K, -4),
    ...densityPart(recipe.fluid, K, run.run),
    ...tarePart("zero of the scale", `thrust-tare:${run.run}`, { points, fit, line: setting.thrustTare }),
  ]);
}

/** Shaft power against ρ n³ D⁵. Null where shaft power is not known at two plateaus or more. */
export function powerFitOf(used: readonly JudgedPlateau[], run: FitSetting): FullFit | null {
  const { channels, recipe, propeller, setting, singleReadings } = run;
  const known = used.filter(({ powerPoint }) => powerPoint !== null && powerPoint.y > NO_POWER);
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
    ...densityPart(recipe.fluid, C, run.run),
    ...tarePart("zero of the torque cell", `torque-tare:${run.run}`, { points, fit, line: setting.torqueTare }),
  ];
  return fullFit(fit, parts);
}

function electricalParts({ electricalPower, voltage, current }: Channels, C: number): CommonPart[] {
  if (electricalPower) return calibrationPart(electricalPower, "electrical power", C, 1);
  return [...calibrationPart(voltage, "voltage", C, 1), ...calibrationPart(current, "current", C, 1)];
}
