import { asShare, notBelowZero, type Told } from "../../quantity/told.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { Battery } from "./battery.ts";
import { drainingAt } from "./drain.ts";
import type { LegRun } from "./missionRun.ts";
import type { Leg } from "./plan.ts";

/** Numbers of a leg that are told with their doubt, in the order of `legNumbers`. */
export interface LegTold {
  /** Mean power from the bus, W. */ readonly power: Told;
  /** At its end, A. */ readonly greatestCurrent: Told;
  /** At its end, V. */ readonly leastVoltage: Told;
  /** C. */ readonly charge: Told;
  /** Left the ideal source, J. */ readonly energyTaken: Told;
  /** Share of the charge when it ended. */ readonly chargeAfter: Uncertain;
}

export const LEG_NUMBERS = 6;

/**
 * What a leg draws, as numbers whose changes are those of its doubts.
 *
 *   P ≈ P(middle of its charge),   E ≈ U_oc(middle) Q
 *
 * Assumes  that mean power and energy change as they do in the middle of the leg, which a change by first order does not tell apart.
 */
export function legNumbers(battery: Battery, { draw }: Leg, run: LegRun): number[] {
  if (!draw.can || run.time === 0) return Array.from({ length: LEG_NUMBERS }, () => 0);
  const middle = drainingAt(battery, draw.drain, 0.5 * (run.from + run.to));
  const end = drainingAt(battery, draw.drain, run.to);
  return [middle.power, end.current, end.voltage, run.charge, middle.openCircuitVoltage * run.charge, run.to];
}

/** The numbers of a leg with the standard uncertainties found for `legNumbers`; null where it was not done at all. */
export function legTold(battery: Battery, { draw }: Leg, run: LegRun, spreads: readonly number[]): LegTold | null {
  if (!draw.can || run.time === 0) return null;
  const end = drainingAt(battery, draw.drain, run.to);
  const power = (run.energy.source - run.energy.supplyLoss) / run.time;
  const [ofPower, ofCurrent, ofVoltage, ofCharge, ofEnergy, ofLeft] = spreads;
  return {
    power: notBelowZero(uncertain(power, ofPower!)),
    greatestCurrent: notBelowZero(uncertain(end.current, ofCurrent!)),
    leastVoltage: notBelowZero(uncertain(end.voltage, ofVoltage!)),
    charge: notBelowZero(uncertain(run.charge, ofCharge!)),
    energyTaken: notBelowZero(uncertain(run.energy.source, ofEnergy!)),
    chargeAfter: asShare(uncertain(run.to, ofLeft!)),
  };
}
