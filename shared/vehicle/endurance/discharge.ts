import type { EnergyAccount } from "../../model/vehicle/account.ts";
import { gaussLegendre } from "../../numeric/gaussLegendre.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { Battery } from "./battery.ts";
import { currentAt, type Drain, drainingAt } from "./drain.ts";

export interface Discharge {
  /** Share of the charge at its end. */ readonly to: number;
  /** s. */ readonly time: number;
  /** The whole of the time that was asked for. */ readonly complete: boolean;
}

export interface DischargeAsk {
  /** Share of the charge at the beginning. */ readonly from: number;
  /** Share at which it ends at the latest. */ readonly until: number;
  /** s. */ readonly duration: number;
}

/** Between two points of the curve of a cell all is smooth: this many nodes leave an error near rounding. */
const RULE = gaussLegendre(8);
/** Width of the last bracket of the share at which a leg ends. */
const TOLERANCE = 1e-14;

/**
 * A demand on a battery from a share of its charge for a time, or until a share is reached, whichever comes first.
 *
 *   dQ/dt = −I(Q)   so that   t = ∫ dQ/I
 *
 * For a source of constant voltage this is t = Q/I.
 *
 * Assumes  the bus in its steady state at every moment.
 */
export function discharge(battery: Battery, drain: Drain, { from, until, duration }: DischargeAsk): Discharge {
  if (currentAt(battery, drain, from) === 0) return idle(from, duration);
  let [top, time] = [from, 0];
  for (const end of stretchEnds(battery, from, until)) {
    const whole = timeBetween(battery, drain, top, end);
    if (time + whole >= duration) {
      return {
        to: shareAfter(battery, drain, { from: top, until: end, duration: duration - time }),
        time: duration,
        complete: true,
      };
    }
    [top, time] = [end, time + whole];
  }
  return { to: top, time, complete: time >= duration };
}

function idle(from: number, duration: number): Discharge {
  const endless = !Number.isFinite(duration);
  return { to: from, time: endless ? 0 : duration, complete: !endless };
}

/** Points of the curve between two shares, falling, and the lower share. */
function stretchEnds({ knots }: Battery, from: number, until: number): number[] {
  return until < from ? [...knots.filter((knot) => knot < from && knot > until), until] : [];
}

/** Share at which a time from the upper share is over, above the lower one. */
function shareAfter(battery: Battery, drain: Drain, { from, until, duration }: DischargeAsk): number {
  if (duration <= 0) return from;
  const late = (share: number) => (share >= from ? 0 : timeBetween(battery, drain, from, share)) - duration;
  if (late(until) <= 0) return until;
  return bracketedRoot(late, until, from, { relativeTolerance: TOLERANCE }).root;
}

/** Time between two shares that no point of the curve parts, s. */
function timeBetween(battery: Battery, drain: Drain, top: number, end: number): number {
  const [half, middle] = [0.5 * (top - end), 0.5 * (top + end)];
  let inverse = 0;
  for (let k = 0; k < RULE.nodes.length; k++) {
    inverse += RULE.weights[k]! / currentAt(battery, drain, middle + half * RULE.nodes[k]!);
  }
  return half * battery.rated * inverse;
}

export const NO_ENERGY: EnergyAccount = {
  ...{ source: 0, supplyLoss: 0, hotel: 0, controllers: 0, motors: 0, propellers: 0, useful: 0 },
};

/** Two accounts of energy as one, J. */
export function addedEnergy(a: EnergyAccount, b: EnergyAccount): EnergyAccount {
  return {
    source: a.source + b.source,
    supplyLoss: a.supplyLoss + b.supplyLoss,
    hotel: a.hotel + b.hotel,
    controllers: a.controllers + b.controllers,
    motors: a.motors + b.motors,
    propellers: a.propellers + b.propellers,
    useful: a.useful + b.useful,
  };
}

/**
 * Where the energy went while a demand took a battery from one share of its charge to a lower one, J.
 *
 *   E_i = ∫ P_i dQ/I
 *
 * The parts add up to what left the ideal source, to rounding: the same nodes serve for all.
 */
export function energyBetween(battery: Battery, drain: Drain, from: number, to: number): EnergyAccount {
  const energy = { ...NO_ENERGY };
  let top = from;
  for (const end of stretchEnds(battery, from, to)) {
    const [half, middle] = [0.5 * (top - end), 0.5 * (top + end)];
    for (let k = 0; k < RULE.nodes.length; k++) {
      const { openCircuitVoltage, voltage, current, parts } = drainingAt(
        battery,
        drain,
        middle + half * RULE.nodes[k]!,
      );
      const charge = half * RULE.weights[k]! * battery.rated;
      const time = charge / current;
      energy.source += openCircuitVoltage * charge;
      energy.supplyLoss += (openCircuitVoltage - voltage) * charge;
      energy.hotel += parts.hotel * time;
      energy.controllers += parts.controllers * time;
      energy.motors += parts.motors * time;
      energy.propellers += parts.propellers * time;
      energy.useful += parts.useful * time;
    }
    top = end;
  }
  return energy;
}
