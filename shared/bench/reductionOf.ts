import { calibrationSentence } from "../calibration/calibrationWords.ts";
import { InstrumentRole } from "../model/instrument.ts";
import type { QualityCheck } from "../model/quality.ts";
import type { Plateau, Reduction } from "../model/reduction.ts";
import { known, withParts } from "../numeric/combined.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../propeller/coefficients.ts";
import { scaled, type Uncertain, uncertain } from "../quantity/uncertain.ts";
import type { Warning } from "../quantity/warning.ts";
import { calibrationDoubts, relativeDoubt } from "./appliedCalibration.ts";
import { budgetOf } from "./budget.ts";
import { type Channel, type Channels, headerOf } from "./channels.ts";
import { type FitPoint, residualsOf, weighingUncertainty } from "./coefficientFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { MeasuredPlateau } from "./measuredPlateau.ts";
import { motorParts } from "./motorParts.ts";
import { rejectedStretches } from "./rejectedStretches.ts";
import type { RunFacts } from "./runFacts.ts";
import type { SampleMean } from "./sampleMean.ts";
import { sweepDocument } from "./sweepDocument.ts";
import { driftOf, driftRateOf, tareCorners, tareUncertainty } from "./tareLine.ts";

/** The document of a reduced run. */
export function reductionOf(
  facts: RunFacts,
  source: { readonly sha256: string; readonly program: string },
  { warnings, quality }: { readonly warnings: readonly Warning[]; readonly quality: readonly QualityCheck[] },
): Reduction {
  const { table, recipe, propeller, fluid, thrust, power, merit, law } = facts;
  const C_P = power?.document.coefficient ?? null;
  return {
    source: { fileName: table.fileName, sha256: source.sha256, rows: table.rows, program: source.program },
    columns: recipe.columns.map((use) => ({ ...use, header: headerOf(table, use.column) })),
    fluid,
    diameter: uncertain(propeller.diameter, propeller.diameterUncertainty),
    tare: tareDocument(facts),
    plateaus: facts.plateaus.map((plateau) => plateauDocument(plateau, facts)),
    rejected: rejectedStretches(facts),
    sweep: facts.sweep && sweepDocument(facts.sweep),
    thrustCoefficient: thrust.document.coefficient,
    powerCoefficient: C_P,
    torqueCoefficient: C_P ? scaled(C_P, TORQUE_OVER_POWER_COEFFICIENT) : null,
    powerSource: facts.powerSource,
    staticMerit: merit,
    exponent: law?.exponent ?? null,
    intercept: law?.intercept ?? null,
    thrustFit: thrust.document,
    powerFit: power?.document ?? null,
    advance: facts.advance,
    reverse: facts.reverse,
    budget: budgetOf(facts),
    ...calibrationsOf(facts.channels),
    quality: [...quality],
    warnings: [...warnings],
  };
}

/** The instruments behind the channels, each with what it is worth. */
function calibrationsOf(channels: Channels): Pick<Reduction, "calibrations"> {
  const found = InstrumentRole.options.flatMap((role) => {
    const calibration = channels[role]?.calibration;
    if (!calibration) return [];
    const { instrument } = calibration;
    return [{ role, name: instrument.name, sentence: calibrationSentence(instrument, calibration) }];
  });
  return found.length === 0 ? {} : { calibrations: found };
}

function tareDocument({ thrustTare: line, timeline, channels }: RunFacts): Reduction["tare"] {
  return {
    shape: line.shape,
    driftRate: driftRateOf(line, channels.time !== undefined),
    line: tareCorners(line, timeline),
    windows: line.windows.map(({ start, end, mean }) => ({ start, end, thrust: withDoubts(mean, []) })),
    drift: driftOf(line),
  };
}

function plateauDocument(plateau: JudgedPlateau, facts: RunFacts): Plateau {
  const { measured, thrustPoint, powerPoint } = plateau;
  const { channels } = facts;
  const tareDoubt = tareUncertainty(facts.thrustTare, measured.thrustTare);
  const clocked = measured.start !== null && measured.end !== null;
  return {
    start: measured.start,
    end: measured.end,
    duration: clocked ? measured.end! - measured.start! : null,
    firstLine: measured.firstLine,
    lastLine: measured.lastLine,
    span: { start: measured.traceStart, end: measured.traceEnd },
    foundBy: measured.span.foundBy,
    settlingTime: measured.span.settlingTime,
    samples: measured.thrust.samples,
    effectiveSamples: measured.thrust.effectiveSamples,
    command: measured.command,
    rotationRate: calibrated(measured.rotationRate, channels.rotationRate),
    thrust: calibrated(measured.thrust, channels.thrust, facts.thrustTare.windows.length > 0 ? tareDoubt : null),
    thrustTare: measured.thrustTare.value,
    tareUncertainty: tareDoubt,
    torque: measured.torque && calibrated(measured.torque, channels.torque, torqueTareDoubt(plateau)),
    voltage: measured.voltage && calibrated(measured.voltage, channels.voltage),
    current: measured.current && calibrated(measured.current, channels.current),
    electricalPower: measured.electricalPower && electricalPower(measured, facts),
    shaftPower: shaftPowerShown(plateau, facts),
    thrustCoefficient: ofThisPlateau(thrustPoint),
    powerCoefficient: powerPoint && ofThisPlateau(powerPoint),
    momentumLimit: plateau.momentumLimit,
    used: plateau.used,
    leftOutBecause: facts.reverse?.plateaus.includes(plateau.number)
      ? `${plateau.leftOutBecause}; it counts in the coefficients astern`
      : plateau.leftOutBecause,
    residual: residualOf(plateau, facts),
  };
}

/** Standard uncertainty of the torque tare, N·m; null where no tare was taken off. */
function torqueTareDoubt({ measured, shaftPower, powerPoint }: JudgedPlateau): number | null {
  if (!measured.torqueTare || measured.torqueTare.parts.length === 0) return null;
  return shaftPower && powerPoint && shaftPower.perTorque !== 0
    ? powerPoint.tareUncertainty / Math.abs(shaftPower.perTorque)
    : 0;
}

/** Electrical power from two columns carries the calibration of both. */
function electricalPower(measured: MeasuredPlateau, { channels }: RunFacts): Uncertain {
  const mean = measured.electricalPower!;
  return withDoubts(mean, [relativeElectricalDoubt(measured, channels) * mean.mean]);
}

function relativeElectricalDoubt(measured: MeasuredPlateau, channels: Channels): number {
  const { electricalPower: column, voltage, current } = channels;
  if (column) return column.relativeUncertainty;
  const [U, I] = [measured.voltage?.mean ?? 0, measured.current?.mean ?? 0];
  return Math.hypot(relativeDoubt(voltage, U), relativeDoubt(current, I));
}

/** Shaft power with what its plateau shows, the calibration of the meters it was made from, and the motor's constants. */
function shaftPowerShown({ measured, shaftPower, powerPoint }: JudgedPlateau, facts: RunFacts): Uncertain | null {
  if (!shaftPower || !powerPoint) return null;
  const { channels, standMotor, powerSource } = facts;
  const { mean, byRate, byElectricalPower, byConstants, perTorque } = shaftPower;
  const own = {
    standardUncertainty: weighingUncertainty(powerPoint),
    degreesOfFreedom: powerPoint.scatterDegreesOfFreedom,
  };
  const tared = (measured.torqueTare?.parts.length ?? 0) > 0;
  const torques = measured.torque ? calibrationDoubts(channels.torque, measured.torque.mean, tared) : [];
  const { electricalPower: electrical } = measured;
  return withParts(mean, [
    own,
    ...known(
      ...(powerSource === "torque" ? torques.map((doubt) => perTorque * doubt) : []),
      electrical === null ? 0 : mean * byElectricalPower * relativeElectricalDoubt(measured, channels),
      mean * byRate * relativeDoubt(channels.rotationRate, measured.rotationRate.mean),
      ...(powerSource === "motorConstants" && standMotor
        ? motorParts(standMotor, byConstants).map(({ change }) => change)
        : []),
    ),
  ]);
}

/** A mean with scatter, rounding, calibration and the doubt of its tare; null where no tare was taken off. */
function calibrated(mean: SampleMean, channel: Channel | undefined, tareDoubt: number | null = null): Uncertain {
  return withDoubts(mean, [...calibrationDoubts(channel, mean.mean, tareDoubt !== null), tareDoubt ?? 0]);
}

function withDoubts(mean: SampleMean, others: readonly number[]): Uncertain {
  const scatter = { standardUncertainty: mean.scatter, degreesOfFreedom: mean.degreesOfFreedom };
  return withParts(mean.mean, [scatter, ...known(mean.rounding, ...others)]);
}

/**
 * Coefficient of one plateau with what is its own: scatter, rounding and tare. What all plateaus share (calibration,
 * diameter, density) is left to the fit, or it would hide how the plateaus scatter about it.
 */
function ofThisPlateau(point: FitPoint): Uncertain {
  const K = point.y / point.x;
  const scatter = { standardUncertainty: point.scatter / point.x, degreesOfFreedom: point.scatterDegreesOfFreedom };
  const others = [point.rounding, K * point.roundingX, point.tareUncertainty].map((doubt) => doubt / point.x);
  return withParts(K, [scatter, ...known(...others)]);
}

/** Distance from the line through the origin, or from the curve where the plateau lies at speed or no line was fitted. */
function residualOf(
  { number, thrustPoint: point, turnsOtherWay, used }: JudgedPlateau,
  facts: RunFacts,
): number | null {
  const atSpeed = facts.advance?.points.find(({ plateau }) => plateau === number);
  if (turnsOtherWay && facts.reverse) return null;
  if (atSpeed && (!atSpeed.isAtRest || !used)) return atSpeed.residual;
  return residualsOf([point], facts.thrust.fit.coefficient)[0]!;
}
