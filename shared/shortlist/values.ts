import type { Criterion } from "../model/shortlist.ts";
import type { FrontQuantity } from "../model/shortlistResult.ts";
import type { Candidate } from "./candidate.ts";

/** What a combination is ranked and drawn by, SI; NaN where it is not known, Infinity for an endurance without end. */
export type Values = Record<Criterion | FrontQuantity, number>;

/**
 * Values of the combination that `candidate` holds, in the first state that is asked for.
 *
 *   thrust = T_max within all limits,   thrust margin = T_max/T_demanded − 1
 *
 * Thrust over electrical power and tip speed are those at the demanded thrust. Where no thrust is demanded they are those
 * at the greatest, and the margin is the greatest thrust itself, N.
 */
export function valuesOf(candidate: Candidate): Values {
  const { judge, inputs, mass, price, endurance } = candidate;
  const { solver, table } = judge;
  const demanded = table.duties[0]!.thrust;
  const greatestRate = candidate.greatestRate(0);
  const thrust = solver.thrustAt(greatestRate);
  const rate = demanded > 0 ? candidate.rates[0]! : greatestRate;
  const { electricalPower } = solver.runAt(rate);
  return {
    thrust,
    thrustPerPower: (demanded > 0 ? demanded : thrust) / electricalPower,
    thrustMargin: demanded > 0 ? thrust / demanded - 1 : thrust,
    tipSpeed: Math.PI * rate * inputs.diameter,
    mass,
    price,
    endurance,
  };
}

/** The same without the greatest thrust, which takes a search: for a ranking that does not weigh it. */
export function valuesAtDemand(candidate: Candidate): Values {
  const { judge, inputs, mass, price, endurance } = candidate;
  const { solver, table } = judge;
  const demanded = table.duties[0]!.thrust;
  if (demanded === 0) return valuesOf(candidate);
  const [curve, rate] = [candidate.curves[0]!, candidate.rates[0]!];
  solver.fill(inputs, curve, curve.advance);
  return {
    thrust: Number.NaN,
    thrustPerPower: demanded / solver.runAt(rate).electricalPower,
    thrustMargin: Number.NaN,
    tipSpeed: Math.PI * rate * inputs.diameter,
    mass,
    price,
    endurance,
  };
}
