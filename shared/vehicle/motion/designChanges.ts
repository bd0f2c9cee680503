import type { DriveRequest } from "../../model/drive.ts";
import type { DesignChange } from "../../model/vehicle/motionAnswer.ts";
import { withoutInterval } from "../../quantity/told.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, uncertainOf } from "../propulsion/firstOrder.ts";
import { type PropulsionModel, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { linearSpeed, type PullFor } from "./linearMotion.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { steadySpeed } from "./steadySpeed.ts";

interface Change {
  readonly key: string;
  readonly name: string;
  readonly text: string;
  readonly numbers: (numbers: VehicleNumbers) => VehicleNumbers;
  /** Whether the vehicle has what is changed. */ readonly applies: (
    numbers: VehicleNumbers,
    tether: boolean,
  ) => boolean;
}

const forDrives =
  (change: (request: DriveRequest) => DriveRequest) =>
  (numbers: VehicleNumbers): VehicleNumbers => ({
    ...numbers,
    drives: numbers.drives.map((ways) => ({
      ...ways,
      ahead: change(ways.ahead),
      astern: ways.astern && change(ways.astern),
    })),
  });

const always = () => true;

const CHANGES: readonly Change[] = [
  {
    ...{ key: "diameter", name: "Propellers 10 % larger", applies: always },
    text: "The same shape scaled: equal coefficients at equal advance ratio.",
    numbers: forDrives((request) => ({ ...request, diameter: 1.1 * request.diameter })),
  },
  {
    ...{ key: "drag", name: "10 % less drag", applies: always, text: "Of the vehicle ahead, without the tether." },
    numbers: (numbers) => {
      const ahead = numbers.drag.ahead!;
      return {
        ...numbers,
        drag: { ...numbers.drag, ahead: { ...ahead, dragArea: 0.9 * ahead.dragArea, linear: 0.9 * ahead.linear } },
      };
    },
  },
  {
    ...{ key: "tether", name: "Tether 10 % thinner", text: "Its drag goes with the diameter; its resistance stays." },
    applies: (_, tether) => tether,
    numbers: (numbers) => ({
      ...numbers,
      tether: { ...numbers.tether, normal: 0.9 * numbers.tether.normal, tangential: 0.9 * numbers.tether.tangential },
    }),
  },
  {
    ...{
      key: "voltage",
      name: "10 % higher voltage",
      applies: always,
      text: "Open-circuit voltage, at equal resistance; look at the ratings of motor and controller.",
    },
    numbers: (numbers) => ({
      ...numbers,
      supply: { ...numbers.supply, openCircuitVoltage: 1.1 * numbers.supply.openCircuitVoltage },
    }),
  },
  {
    ...{ key: "resistance", name: "Half the resistance of the supply", text: "Pack, leads and tether together." },
    applies: ({ supply }) => supply.resistance > 0,
    numbers: (numbers) => ({ ...numbers, supply: { ...numbers.supply, resistance: 0.5 * numbers.supply.resistance } }),
  },
  {
    ...{ key: "hotel", name: "Hotel load 20 % lighter", text: "Lamps, camera and computer." },
    applies: ({ hotelPower }) => hotelPower > 0,
    numbers: (numbers) => ({ ...numbers, hotelPower: 0.8 * numbers.hotelPower }),
  },
  {
    ...{ key: "speedConstant", name: "Motor wound 10 % faster", applies: always },
    text: "Speed constant 10 % higher, winding resistance by the square of it lower, no-load current higher: the same copper.",
    numbers: forDrives((request) => ({
      ...request,
      speedConstant: 1.1 * request.speedConstant,
      motorResistance: request.motorResistance / 1.21,
      noLoadCurrent: 1.1 * request.noLoadCurrent,
    })),
  },
];

export interface ChangeQuestion {
  readonly doubts: VehicleDoubts;
  readonly model: PropulsionModel;
  readonly ahead: SolvedWay;
  readonly pullFor: PullFor;
  /** Why no interval can be stated; null: it can. */ readonly why: string | null;
}

/**
 * What each change does to the steady speed ahead, with the doubt of the change: inputs that move both speeds alike cancel.
 * The greatest gain first.
 */
export function designChanges({ doubts, model, ahead, pullFor, why }: ChangeQuestion): DesignChange[] {
  const now = ahead.speed;
  if (now === null) return [];
  const tether = ahead.problem.pull([1, 0, 0]).force.some((one) => one !== 0);
  return CHANGES.filter(({ applies }) => applies(model.numbers, tether))
    .map(({ key, name, text, numbers }) => {
      const changed = numbers(model.numbers);
      const problem = { ...ahead.problem, model: withNumbers(model, changed), pull: pullFor(changed) };
      const steady = steadySpeed(problem);
      const next: Linear = steady.speed > 0 ? linearSpeed(doubts, problem, pullFor, steady) : { value: 0, by: now.by };
      const change = { value: next.value - now.value, by: next.by.map((one, i) => one - now.by[i]!) };
      const told = why === null ? uncertainOf(doubts, change) : withoutInterval(change.value, why);
      return { key, name, text, speed: next.value, change: told };
    })
    .sort((a, b) => b.change.value - a.change.value);
}
