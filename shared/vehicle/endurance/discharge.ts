import type { EnergyAccount } from "../../model/vehicle/enduranceAnswer.ts";
import { gaussLegendre } from "../../numeric/gaussLegendre.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import type { Battery } from "./battery.ts";
import { type Drain, drainingAt } from "./drain.ts";
import { PART_NAMES } from "./powerTable.ts";

export interface Discharge {
  /** Share of the charge at its end. */ readonly to: number;
  /** s. */ readonly time: number;
  /** C. */ readonly charge: number;
  readonly energy: EnergyAccount;
  /** The whole of the time that was asked for. */ readonly complete: boolean;
}

export const NO_ENERGY: EnergyAccount = {
  ...{ source: 0, supplyLoss: 0, hotel: 0, controllers: 0, motors: 0, propellers: 0, useful: 0 },
};

export function addedEnergy(a: EnergyAccount, b: EnergyAccount): EnergyAccount {
  const sum = { ...a };
  for (const name of Object.keys(sum) as (keyof EnergyAccount)[]) sum[name] = a[name] + b[name];
  return sum;
}

/** Between two points of the curve of a cell all is smooth: this many nodes leave an error near rounding. */
const RULE = gaussLegendre(8);
/** Width of the last bracket of the share at which a leg ends. */
const TOLERANCE = 1e-14;

/**
 * A demand on a battery from a share of its charge for a time (s), or until a share is reached, whichever comes first.
 *
 *   dQ/dt = −I(Q)   so that   t = ∫ dQ/I,   E_i = ∫ P_i dQ/I
 *
 * For a source of constant voltage this is t = Q/I. The sum of the parts of the energy is what left the ideal source, to
 * rounding, as the same nodes serve for all.
 *
 * Assumes  the bus in its steady state at every moment.
 */
export function discharge(
  battery: Battery,
  drain: Drain,
  { from, until, duration }: { readonly from: number; readonly until: number; readonly duration: number },
): Discharge {
  if (drainingAt(battery, drain, from).power === 0) return idle(from, duration);
  const ends = [...battery.knots.filter((knot) => knot < from && knot > until), until];
  let [top, time, energy] = [from, 0, NO_ENERGY];
  for (const end of ends) {
    if (end >= top) continue;
    const whole = stretch(battery, drain, top, end);
    if (time + whole.time >= duration) {
      const to = shareAfter(battery, drain, { top, end, rest: duration - time });
      return finished(battery, from, to, duration, addedEnergy(energy, stretch(battery, drain, top, to).energy), true);
    }
    [top, time, energy] = [end, time + whole.time, addedEnergy(energy, whole.energy)];
  }
  return finished(battery, from, top, time, energy, time >= duration);
}

function idle(from: number, duration: number): Discharge {
  const endless = !Number.isFinite(duration);
  return { to: from, time: endless ? 0 : duration, charge: 0, energy: NO_ENERGY, complete: !endless };
}

function finished(
  battery: Battery,
  from: number,
  to: number,
  time: number,
  energy: EnergyAccount,
  complete: boolean,
): Discharge {
  return { to, time, charge: battery.rated * (from - to), energy, complete };
}

/** Share at which `rest` seconds from `top` are over, above `end`. */
function shareAfter(
  battery: Battery,
  drain: Drain,
  { top, end, rest }: { readonly top: number; readonly end: number; readonly rest: number },
): number {
  if (rest <= 0) return top;
  const late = (share: number) => (share >= top ? 0 : stretch(battery, drain, top, share).time) - rest;
  if (late(end) <= 0) return end;
  return bracketedRoot(late, end, top, { relativeTolerance: TOLERANCE }).root;
}

/** Time and energy between two shares that no point of the curve parts. */
function stretch(battery: Battery, drain: Drain, top: number, end: number): { time: number; energy: EnergyAccount } {
  const [half, middle] = [0.5 * (top - end), 0.5 * (top + end)];
  const energy = { ...NO_ENERGY };
  let time = 0;
  RULE.nodes.forEach((node, k) => {
    const at = drainingAt(battery, drain, middle + half * node);
    const dt = (half * RULE.weights[k]! * battery.rated) / at.current;
    time += dt;
    energy.source += at.openCircuitVoltage * at.current * dt;
    energy.supplyLoss += (at.openCircuitVoltage - at.voltage) * at.current * dt;
    for (const name of PART_NAMES) energy[name] += at.parts[name] * dt;
  });
  return { time, energy };
}
