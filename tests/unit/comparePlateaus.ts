import { RunFacts } from "../../shared/model/factor.ts";
import type { Plateau } from "../../shared/model/reduction.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { type RunSketch, run } from "./compareRuns.ts";

/** What a test says of a plateau; relative doubts. */
export interface PlateauSketch {
  readonly rotationRate?: number;
  readonly thrust: number;
  readonly electricalPower?: number;
  readonly command?: number;
  readonly doubt?: number;
  readonly used?: boolean;
}

/** Density and diameter of `run` in compareRuns. */
const PER_RATE_SQUARED = 998.6 * 0.076 ** 4;

/** A plateau as a reduction holds it; the rotation rate follows from a thrust coefficient of 0.25 where not given. */
export function plateau({
  thrust,
  rotationRate,
  electricalPower,
  command,
  doubt = 0.005,
  used = true,
}: PlateauSketch): Plateau {
  const rate = rotationRate ?? Math.sqrt(thrust / (0.25 * PER_RATE_SQUARED));
  const of = (value: number) => uncertain(value, Math.abs(value) * doubt);
  const K_T = thrust / (PER_RATE_SQUARED * rate ** 2);
  return {
    ...{ start: null, end: null, duration: null, firstLine: 1, lastLine: 1, span: { start: 0, end: 1 } },
    ...{ foundBy: "row", settlingTime: null, samples: 1, effectiveSamples: 1, command: command ?? null },
    ...{ rotationRate: of(rate), thrust: of(thrust), thrustTare: 0, tareUncertainty: 0 },
    ...{ torque: null, voltage: null, current: null, shaftPower: null },
    electricalPower: electricalPower === undefined ? null : of(electricalPower),
    ...{ thrustCoefficient: of(K_T), powerCoefficient: null, momentumLimit: null },
    ...{ used, leftOutBecause: used ? null : "for the test", residual: null },
  };
}

/** A run whose thrust coefficient is that of its plateaus, by the plain mean. */
export function runOf(plateaus: readonly Plateau[], sketch: Partial<RunSketch> = {}) {
  const own = plateaus.filter((one) => one.used).map(({ thrustCoefficient }) => thrustCoefficient.value);
  const thrustCoefficient = own.reduce((sum, value) => sum + value, 0) / own.length;
  return run({ thrustCoefficient, ...sketch, plateaus: [...plateaus] });
}

let next = 0;

/** Facts of a run; what is not given is not stated. */
export function facts(known: Partial<RunFacts> = {}): RunFacts {
  const id = `run-${next++}`;
  return RunFacts.parse({ id, name: id, ...known });
}
