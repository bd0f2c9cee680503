import type { DriveRequest } from "../../model/drive.ts";
import type { LayoutRequest, ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";
import { busDemand } from "./busDemand.ts";
import type { VehicleDoubts } from "./doubt.ts";
import { linearOf, spreadOfLinear } from "./firstOrder.ts";
import type { PropulsionModel } from "./propulsionModel.ts";
import type { DriveWays, VehicleFacts, VehicleNumbers } from "./vehicleNumbers.ts";
import { driveModel, powerForThrust, setVoltage, type WayModel, wayAtSpeed } from "./wayModel.ts";

/** Points of the table of current against thrust. */
const POINTS = 10;

/**
 * The thrusters as a question to the room of layouts: limits, currents and torques that the drives have at rest, at the bus
 * voltage that full thrust ahead leaves.
 *
 * Assumes  one bus voltage for all demands; those with fewer thrusters have a little more, which `busDemand` counts.
 */
export function layoutRequestOf(
  { vehicle, numbers }: VehicleFacts,
  model: PropulsionModel,
  doubts: VehicleDoubts,
): LayoutRequest {
  const voltage = layoutVoltage(model);
  const drives = numbers.drives.map((ways, d) => driveSides(doubts, model, ways, d, voltage));
  const limit = leastCurrent(model);
  return {
    thrusters: vehicle.thrusters.map(({ drive, ...placed }): ThrusterPlacement => {
      const { forward, reverse } = drives[vehicle.drives.findIndex(({ name }) => name === drive)]!;
      return {
        ...{
          ...placed,
          drive,
          limits: { forward: forward.limit, reverse: reverse?.limit ?? { value: 0, standardUncertainty: 0 } },
        },
        torquePerThrust: { forward: forward.torquePerThrust, reverse: reverse?.torquePerThrust ?? 0 },
        current: { forward: forward.current, reverse: (reverse ?? forward).current },
        currentUncertainty: { forward: forward.currentDoubt, reverse: (reverse ?? forward).currentDoubt },
      };
    }),
    ...(limit !== null && { busCurrentLimit: limit }),
    hotelCurrent: (numbers.hotelPower + standby(model)) / voltage,
    countReactionTorque: false,
  };
}

/** Bus voltage, V, that full thrust ahead leaves; where ahead is not commanded, that without load. */
function layoutVoltage(model: PropulsionModel): number {
  const { held } = model.geometry;
  if (!held.includes("surge")) return model.numbers.supply.openCircuitVoltage;
  const { busVoltage } = busDemand(model, { direction: { surge: 1 } });
  return busVoltage > 0 ? busVoltage : model.numbers.supply.openCircuitVoltage;
}

function leastCurrent({ supplyLimits: { supplyCurrent, fuseCurrent, tetherCurrent } }: PropulsionModel): number | null {
  const stated = [supplyCurrent, fuseCurrent, tetherCurrent].filter((one) => one !== undefined);
  return stated.length === 0 ? null : Math.min(...stated);
}

function driveSides(doubts: VehicleDoubts, model: PropulsionModel, ways: DriveWays, d: number, voltage: number) {
  const side = (which: "ahead" | "astern", request: DriveRequest) => {
    const own = model.drives[d]![which]!;
    const value = greatestOf(own, voltage);
    const thrust = PART * value;
    const current = currentOf(own, voltage, thrust);
    const changedWay = (numbers: VehicleNumbers) => {
      const changed = numbers.drives[d]!;
      return changed === ways ? null : driveModel(changed)[which];
    };
    const linear = linearOf(doubts, model.numbers, value, (numbers) => {
      const way = changedWay(numbers);
      return way && greatestOf(way, voltage);
    });
    const ofCurrent = linearOf(doubts, model.numbers, current, (numbers) => {
      const way = changedWay(numbers);
      return way && currentOf(way, voltage, thrust);
    });
    return {
      limit: { value, standardUncertainty: spreadOfLinear(doubts, linear) },
      torquePerThrust: (request.torqueCoefficient * request.diameter) / request.thrustCoefficient,
      current: currentTable(own, voltage),
      currentDoubt: current > 0 ? spreadOfLinear(doubts, ofCurrent) / current : 0,
    };
  };
  return { forward: side("ahead", ways.ahead), reverse: ways.astern && side("astern", ways.astern) };
}

function greatestOf(way: WayModel, voltage: number): number {
  const at = wayAtSpeed(way, 0);
  setVoltage(at, voltage);
  return at.greatest;
}

/** What the controllers draw by themselves, working or not, W. */
function standby({ thrusters, drives }: PropulsionModel): number {
  return thrusters.reduce((sum, { drive }) => sum + drives[drive]!.ahead.rest.standbyPower, 0);
}

/** Part of the greatest thrust at which the doubt of the current is taken; it is the same to some percent for others. */
const PART = 0.6;

function currentOf(way: WayModel, voltage: number, thrust: number): number {
  const at = wayAtSpeed(way, 0);
  setVoltage(at, voltage);
  return (powerForThrust(at, thrust) - at.chain.standbyPower) / voltage;
}

/**
 * Current from the bus against thrust, beyond what the controller draws by itself; a thruster that makes none has one point
 * that is never reached.
 */
function currentTable(way: WayModel, voltage: number): { thrust: number; current: number }[] {
  const at = wayAtSpeed(way, 0);
  setVoltage(at, voltage);
  if (!(at.greatest > 0)) return [{ thrust: 1, current: 0 }];
  return Array.from({ length: POINTS }, (_, i) => {
    const thrust = at.greatest * ((i + 1) / POINTS) ** (4 / 3);
    return { thrust, current: (powerForThrust(at, thrust) - at.chain.standbyPower) / voltage };
  });
}
