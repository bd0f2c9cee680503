import { partThrottleLossOf } from "../../drive/bus.ts";
import { type Chain, rotationRateAt } from "../../drive/chain.ts";
import { frictionLossOf, propellerTorque, wetTorque } from "../../drive/shaftState.ts";
import type { SteadyState } from "../../drive/steadyState.ts";
import type { PowerAccount } from "../../model/vehicle/account.ts";
import type { BusState, ThrusterState } from "../../model/vehicle/motionAnswer.ts";
import type { BusSolution } from "./busDemand.ts";
import { limitingPart } from "./limitingPart.ts";
import type { PropulsionModel } from "./propulsionModel.ts";
import { powerForThrust, setVoltage } from "./wayModel.ts";

/** Losses of one thruster, W. */
interface ThrusterLosses {
  readonly controller: number;
  readonly motor: number;
  readonly shaft: number;
}

/** Voltage, current and power of a solved bus with their doubt. */
export type BusTold = Pick<BusState, "voltage" | "current" | "power">;

/**
 * A solved bus as a document: every thruster, where the power goes, and what limits it. `useful` is the power that moves
 * the vehicle, force on the hull times speed through the water, W.
 */
export function busState(model: PropulsionModel, solved: BusSolution, useful: number, told: BusTold): BusState {
  const { account, each } = accounted(model, solved, useful);
  return {
    ...{ ...told, openCircuitVoltage: solved.supply.openCircuitVoltage, account },
    thrusters: each.map(({ state }) => state),
    limitedBy: limitingPart(model, solved),
    ...{ share: solved.share, converged: solved.converged },
  };
}

/**
 * Where the power of a solved bus goes, W.
 *
 *   U_oc I = R_s I² + P_h + Σ (controller + motor + propeller) + useful
 *
 * The losses at the propellers are what is left of the shaft power: wake, swirl and friction of the blades.
 */
export const powerAccount = (model: PropulsionModel, solved: BusSolution, useful: number): PowerAccount =>
  accounted(model, solved, useful).account;

function accounted(model: PropulsionModel, solved: BusSolution, useful: number) {
  const { flow, busVoltage, supplyCurrent: I, supply, thrusts, powers } = solved;
  if (busVoltage > 0) for (const way of flow.ways) setVoltage(way, busVoltage);
  const each = thrusts.map((_, i) => thrusterState(model, solved, i));
  const sum = (of: (one: ThrusterLosses) => number) => each.reduce((total, { losses }) => total + of(losses), 0);
  const drawn = powers.reduce((total, one) => total + one, 0);
  const [controllers, motors] = [sum(({ controller }) => controller), sum(({ motor }) => motor)];
  const account: PowerAccount = {
    source: supply.openCircuitVoltage * I,
    supplyLoss: (supply.openCircuitVoltage - busVoltage) * I,
    hotel: I === 0 ? 0 : solved.hotelPower,
    ...{ controllers, motors, propellers: drawn - controllers - motors - useful, useful },
  };
  return { account, each };
}

function thrusterState(model: PropulsionModel, { flow, thrusts, powers, busVoltage }: BusSolution, i: number) {
  const { name, drive } = model.thrusters[i]!;
  const { ahead, astern, inflow } = flow.thrusters[i]!;
  const thrust = thrusts[i]!;
  const isAstern = thrust < 0 && astern !== null;
  const way = isAstern ? astern : ahead;
  const power = busVoltage > 0 ? powerForThrust(way, Math.abs(thrust)) : 0;
  const works = thrust !== 0 && busVoltage > 0;
  const losses = works ? lossesOf(way.chain, way.part, power) : { controller: power, motor: 0, shaft: 0 };
  const state: ThrusterState = {
    name,
    drive: model.drives[drive]!.name,
    thrust: thrust + 0,
    greatestThrust: way.greatest,
    throttle: works ? Math.min(1, way.part.throttle) : 0,
    rotationRate: works ? rotationRateAt(way.chain, way.part.angularVelocity) : 0,
    motorCurrent: works ? way.part.motorCurrent : 0,
    electricalPower: powers[i]!,
    shaftPower: losses.shaft,
    inflow: (isAstern ? -inflow : inflow) + 0,
  };
  return { state, losses };
}

/** Of a turning thruster; where its power is only a share of that state's (below the end of its curve) so are its losses. */
function lossesOf(chain: Chain, state: SteadyState, power: number): ThrusterLosses {
  const { motorCurrent: I, angularVelocity: omega, inputVoltage } = state;
  const resistance = I * I * chain.controllerResistance;
  const part = partThrottleLossOf(chain, state);
  const shaft = propellerTorque(chain, omega) * (omega / chain.gearRatio);
  const gear = shaft * (1 / chain.gearEfficiency - 1);
  const motor = I * I * state.motorResistance + frictionLossOf(chain, state) + wetTorque(chain, omega) * omega + gear;
  const whole = inputVoltage * I + part;
  const share = whole > 0 ? (power - chain.standbyPower) / whole : 0;
  return { controller: share * (resistance + part) + chain.standbyPower, motor: share * motor, shaft: share * shaft };
}
