import type { Plateau, Reduction } from "../model/reduction.ts";
import { correctedInformationCriterion } from "../numeric/informationCriterion.ts";
import { type PolynomialFit, polynomialFit } from "../numeric/polynomialFit.ts";
import type { Uncertain } from "../quantity/uncertain.ts";
import { DIAMETER_KEY, type RunQuantity } from "./runQuantity.ts";

/** What follows from what: the second is held equal when two runs are compared. */
export type LawName = "thrustByElectricalPower" | "thrustByThrottle" | "electricalPowerByThrust";

/** How one run's plateaus hang together, as a curve that may be read between them. */
export interface RunLaw {
  /** Least and greatest condition measured. */
  readonly low: number;
  readonly high: number;
  /** The run's value at a condition; null where the curve gives nothing positive there. */
  readonly at: (condition: number) => RunQuantity | null;
}

/** Why there is no law. */
export interface NoLaw {
  readonly why: string;
}

interface LawKind {
  readonly x: (plateau: Plateau) => Uncertain | null;
  readonly y: (plateau: Plateau) => Uncertain | null;
  readonly toX: (condition: number) => number;
  /** Logarithm where both are powers of the rotation rate; square root of the thrust is nearly straight in the command. */
  readonly scale: "logarithm" | "squareRoot";
  readonly condition: string;
  readonly thrustIs: "value" | "condition";
}

const electricalPower = ({ electricalPower: power }: Plateau) => power;
const thrust = ({ thrust: force }: Plateau) => force;
const command = ({ command: value }: Plateau): Uncertain | null =>
  value === null ? null : { value, standardUncertainty: 0, interval95: [value, value] };

const KINDS: { readonly [L in LawName]: LawKind } = {
  thrustByElectricalPower: {
    ...{ x: electricalPower, y: thrust, toX: Math.log, scale: "logarithm" },
    ...{ condition: "electrical power", thrustIs: "value" },
  },
  electricalPowerByThrust: {
    ...{ x: thrust, y: electricalPower, toX: Math.log, scale: "logarithm" },
    ...{ condition: "electrical power", thrustIs: "condition" },
  },
  thrustByThrottle: {
    ...{ x: command, y: thrust, toX: (value) => value, scale: "squareRoot" },
    ...{ condition: "command", thrustIs: "value" },
  },
};

/** Plateaus from which on a bend is looked for, and fewest that give a line with something left to judge it by. */
const FEWEST = 3;
const FEWEST_FOR_BEND = 6;

/**
 * The law of one run through its plateaus at bollard: ln T against ln P_e (ideally T ~ P_e^(2/3)), ln P_e against ln T, or
 * √T against the command (T ~ n², and n nearly straight in the command). A line, or a bend where six plateaus or more and
 * the corrected information criterion ask for it: motor and controller do not keep their efficiency over the range.
 *
 * The doubt is that of the curve by the scatter of the plateaus about it. Causes that all plateaus share act as on the
 * thrust coefficient, without those of rotation rate, diameter and density, which this quantity does not contain; the
 * electrical meters act by the slope of the curve.
 *
 * Source   weighted least squares (polynomialFit); Hurvich & Tsai, Biometrika 76 (1989) 297.
 */
export function runLaw(run: Reduction, name: LawName): RunLaw | NoLaw {
  const kind = KINDS[name];
  if (run.advance !== null) return { why: `${run.source.fileName} was made at speed through the water` };
  const points = run.plateaus.flatMap((plateau) => pointOf(plateau, kind));
  const conditions = points.map(({ condition }) => condition);
  const distinct = new Set(conditions).size;
  if (distinct < FEWEST) {
    return {
      why: `${run.source.fileName} holds ${distinct} plateau${distinct === 1 ? "" : "s"} with a known ${kind.condition}; three are needed`,
    };
  }
  const fit = curveThrough(points, distinct);
  const meters = meterDoubt(run);
  const scatter = Math.sqrt(fit.chiSquared / fit.degreesOfFreedom);
  const at = (condition: number): RunQuantity | null => {
    const x = kind.toX(condition);
    const y = fit.at(x);
    const isLog = kind.scale === "logarithm";
    if (!(isLog || y > 0)) return null;
    const byCurve = fit.standardErrorAt(x) * scatter;
    return {
      value: isLog ? Math.exp(y) : y * y,
      independent: isLog ? byCurve : (2 * byCurve) / y,
      degreesOfFreedom: fit.degreesOfFreedom,
      common: commonOf(run, kind, { slope: fit.slopeAt(x), meters }),
    };
  };
  return { low: Math.min(...conditions), high: Math.max(...conditions), at };
}

interface LawPoint {
  readonly condition: number;
  readonly x: number;
  readonly y: number;
  /** For the weight alone. */
  readonly u: number;
}

/** Least relative doubt a plateau is weighed with, so that a typed row without any does not rule. */
const LEAST_DOUBT = 1e-4;

function pointOf(plateau: Plateau, { x, y, toX, scale }: LawKind): LawPoint[] {
  const [of, value] = [x(plateau), y(plateau)];
  if (
    !plateau.used ||
    of === null ||
    value === null ||
    !(value.value > 0) ||
    (scale === "logarithm" && !(of.value > 0))
  ) {
    return [];
  }
  const ofX = scale === "logarithm" ? relativeOf(of) : 0;
  const relative = Math.max(LEAST_DOUBT, Math.hypot(relativeOf(value), ofX));
  const point = { condition: of.value, x: toX(of.value) };
  if (scale === "logarithm") return [{ ...point, y: Math.log(value.value), u: relative }];
  const root = Math.sqrt(value.value);
  return [{ ...point, y: root, u: (relative * root) / 2 }];
}

const relativeOf = ({ value, standardUncertainty }: Uncertain) => standardUncertainty / Math.abs(value);

function curveThrough(points: readonly LawPoint[], distinct: number): PolynomialFit {
  const data = { x: points.map(({ x }) => x), y: points.map(({ y }) => y), uncertaintyY: points.map(({ u }) => u) };
  const line = polynomialFit({ ...data, order: 1 });
  if (distinct < FEWEST_FOR_BEND) return line;
  const bend = polynomialFit({ ...data, order: 2 });
  const [ofLine, ofBend] = [line, bend].map(({ chiSquared, order }) =>
    correctedInformationCriterion({ chiSquared, points: points.length, coefficients: order + 1 }),
  ) as [number, number];
  return ofBend < ofLine ? bend : line;
}

interface Meters {
  readonly key: string;
  readonly relative: number;
}

/** Causes in the thrust coefficient that the thrust itself does not have. */
const NOT_OF_THE_THRUST = [DIAMETER_KEY, "density:", "rotationRate-"];

function commonOf({ thrustFit }: Reduction, kind: LawKind, { slope, meters }: { slope: number; meters: Meters }) {
  const common = new Map<string, number>();
  const K_T = thrustFit.coefficient.value;
  const byThrust = kind.thrustIs === "value" ? 1 : -slope;
  for (const { key, standardUncertainty } of thrustFit.components) {
    if (NOT_OF_THE_THRUST.some((start) => key.startsWith(start))) continue;
    common.set(key, (byThrust * standardUncertainty) / K_T);
  }
  if (kind.condition !== "electrical power" || meters.relative === 0) return common;
  return common.set(meters.key, (kind.thrustIs === "value" ? -slope : 1) * meters.relative);
}

/**
 * What all electrical powers of a run share. A plateau's doubt holds it beside scatter of its own, so the least relative
 * doubt among the plateaus is no less. Runs that name the same instruments share it, as do runs that name none.
 */
function meterDoubt({ plateaus, calibrations = [] }: Reduction): Meters {
  const powers = plateaus.flatMap(({ used, electricalPower: power }) =>
    used && power && power.value > 0 ? [power] : [],
  );
  const names = calibrations.filter(({ role }) => role === "voltage" || role === "current").map(({ name }) => name);
  return { key: `electrical-meters:${names.sort().join("+")}`, relative: Math.min(1, ...powers.map(relativeOf)) };
}
