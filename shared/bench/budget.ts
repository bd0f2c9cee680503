import type { Budget, BudgetRow, DoubtSource, RunBudget } from "../model/budget.ts";
import { combined } from "../numeric/combined.ts";
import { coverageFactor, type Uncertain } from "../quantity/uncertain.ts";
import type { FitPoint, OriginFit } from "./coefficientFit.ts";
import type { CommonPart } from "./commonParts.ts";
import type { DoubtInput } from "./doubtInput.ts";
import { type FullFit, meritDoubts } from "./fullFit.ts";
import { powerMisfit, thrustTrend } from "./misfit.ts";
import { type MeasuredAt, plateauInputs } from "./plateauInputs.ts";
import type { RunFacts } from "./runFacts.ts";
import { whatHalves } from "./whatHalves.ts";

/** An input with the key under which runs and coefficients share its error. */
export interface KeyedInput extends DoubtInput {
  readonly key: string;
}

/** Every input of one coefficient. */
export interface CoefficientInputs {
  readonly own: readonly KeyedInput[];
  readonly beyond: readonly KeyedInput[];
  readonly common: readonly KeyedInput[];
}

const THRUST: MeasuredAt = { what: "thrust", unit: "N" };
const POWER: MeasuredAt = { what: "shaft power", unit: "W" };

/** Points of the thrust fit and of the power fit; null where a fit does not rest on plateaus one by one. */
export function fitPointsOf({ used, thrust, power, sweep }: RunFacts) {
  const ofFit = (points: readonly FitPoint[], { fit }: FullFit) =>
    points.length === fit.influences.length ? points : null;
  const powers = used.flatMap(({ powerPoint }) => (powerPoint && powerPoint.y > 0 ? [powerPoint] : []));
  return {
    // A sweep is fitted as a whole; its bins are for display.
    thrust: sweep
      ? null
      : ofFit(
          used.map(({ thrustPoint }) => thrustPoint),
          thrust,
        ),
    power: power && ofFit(powers, power),
  };
}

/** The inputs of both coefficients of a run. */
export function inputsOf(facts: RunFacts): { thrust: CoefficientInputs; power: CoefficientInputs | null } {
  const points = fitPointsOf(facts);
  return {
    thrust: coefficientInputs(facts.thrust, points.thrust, THRUST),
    power: facts.power && coefficientInputs(facts.power, points.power, POWER),
  };
}

function coefficientInputs(
  { fit, parts }: FullFit,
  points: readonly FitPoint[] | null,
  at: MeasuredAt,
): CoefficientInputs {
  const { own, beyond } = points ? plateauInputs(points, fit, at) : { own: [], beyond: sweepInput(fit, at) };
  const keyed = (inputs: readonly DoubtInput[]) =>
    inputs.map((input) => ({ ...input, key: `${at.what}:${input.source}` }));
  return { own: keyed(own), beyond: keyed(beyond), common: parts.flatMap(partInputs) };
}

function partInputs(part: CommonPart): KeyedInput[] {
  const inputs = part.inputs ?? [plainInput(part)];
  return inputs.map((input) => ({ ...input, key: part.key }));
}

/** A cause of which only its effect is known: taken as an input in standard uncertainties. */
function plainInput({ name, key, change, degreesOfFreedom }: CommonPart): DoubtInput {
  const source: DoubtSource = /-(instrument|calibration):/.test(key) ? "calibration" : "other";
  return {
    ...{ name, source, kind: "B", distribution: Number.isFinite(degreesOfFreedom) ? "student" : "normal" },
    ...{ standardUncertainty: 1, unit: "", sensitivity: change, degreesOfFreedom },
    pieces: [{ change, degreesOfFreedom }],
  };
}

/** A sweep that was fitted as a whole shows one scatter. */
function sweepInput({ independent, degreesOfFreedom }: OriginFit, { what }: MeasuredAt): DoubtInput[] {
  if (independent === 0) return [];
  return [
    {
      ...{
        name: `scatter of the ${what} over the sweep`,
        source: "plateauScatter",
        kind: "A",
        distribution: "student",
      },
      ...{ standardUncertainty: 1, unit: "", sensitivity: independent, degreesOfFreedom },
      pieces: [{ change: independent, degreesOfFreedom }],
    },
  ];
}

/**
 * Uncertainty budgets of a run: every cause of doubt with what it brings; the squares of the parts sum to the square of
 * the published standard uncertainty.
 *
 * Source   JCGM 100:2008 (GUM), 5.1.2, 5.2.2 (what two coefficients share stays shared in the merit), 8 and annex G.
 */
export function budgetOf(facts: RunFacts): RunBudget {
  const { thrust, power, merit } = facts;
  const inputs = inputsOf(facts);
  const all = ({ own, beyond, common }: CoefficientInputs) => [...own, ...beyond, ...common];
  const [K_T, C_P] = [thrust.document.coefficient, power?.document.coefficient ?? null];
  return {
    thrustCoefficient: budget("thrustCoefficient", K_T, all(inputs.thrust), thrust.document.degreesOfFreedom, facts),
    powerCoefficient:
      C_P &&
      inputs.power &&
      budget("powerCoefficient", C_P, all(inputs.power), power!.document.degreesOfFreedom, facts),
    staticMerit:
      merit && power && inputs.power
        ? meritBudget(merit, thrust, power, all(inputs.thrust), all(inputs.power), facts)
        : null,
  };
}

function meritBudget(
  merit: Uncertain,
  thrust: FullFit,
  power: FullFit,
  ofThrust: readonly KeyedInput[],
  ofPower: readonly KeyedInput[],
  facts: RunFacts,
): Budget {
  const { byThrust, byPower, doubts } = meritDoubts(thrust, power)!;
  const together = new Map<string, KeyedInput>();
  const add = (inputs: readonly KeyedInput[], weight: number) => {
    for (const input of inputs) {
      const id = `${input.key}|${input.name}`;
      const before = together.get(id)?.sensitivity ?? 0;
      together.set(id, { ...input, sensitivity: before + weight * input.sensitivity });
    }
  };
  add(ofThrust, byThrust);
  add(ofPower, byPower);
  return budget("staticMerit", merit, [...together.values()], combined(doubts).degreesOfFreedom, facts);
}

/** So many degrees of freedom that they count as infinite. */
const AS_GOOD_AS_INFINITE = 1e9;
const shownDegrees = (degrees: number) => (degrees >= AS_GOOD_AS_INFINITE ? null : degrees);

function budget(
  quantity: Budget["quantity"],
  result: Uncertain,
  inputs: readonly KeyedInput[],
  degreesOfFreedom: number,
  facts: RunFacts,
): Budget {
  const variances = inputs.map((input) => (input.sensitivity * input.standardUncertainty) ** 2);
  const total = variances.reduce((sum, variance) => sum + variance, 0);
  const rows = inputs
    .map((input, i) => rowOf(input, total > 0 ? variances[i]! / total : 0))
    .filter((row) => row.standardUncertainty > 0)
    .sort((a, b) => b.share - a.share);
  return {
    quantity,
    result: { ...result, interval95: [result.interval95[0], result.interval95[1]] },
    coverageFactor: coverageFactor(degreesOfFreedom),
    degreesOfFreedom: shownDegrees(degreesOfFreedom),
    rows,
    halving: whatHalves({ rows, plateaus: facts.used.length, missesByTrend: missesByTrend(quantity, facts) }),
  };
}

/** Whether the plateaus that the quantity rests on miss their law by a trend, which no more plateaus make smaller. */
function missesByTrend(quantity: Budget["quantity"], facts: RunFacts): boolean {
  const byThrust = quantity !== "powerCoefficient" && thrustTrend(facts) !== null;
  return byThrust || (quantity !== "thrustCoefficient" && powerMisfit(facts)?.kind === "trend");
}

function rowOf(input: KeyedInput, share: number): BudgetRow {
  const { name, source, kind, distribution, standardUncertainty, unit, sensitivity, degreesOfFreedom, key } = input;
  return {
    ...{ name, source, kind, distribution, sensitivity, share, key },
    inputUncertainty: standardUncertainty,
    inputUnit: unit,
    standardUncertainty: Math.abs(sensitivity * standardUncertainty),
    degreesOfFreedom: shownDegrees(degreesOfFreedom),
  };
}
