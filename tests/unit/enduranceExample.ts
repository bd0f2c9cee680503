import type { Pack as VehiclePack } from "../../shared/model/parts/pack.ts";
import type { EnduranceAnswer } from "../../shared/model/vehicle/enduranceAnswer.ts";
import type { MissionLeg } from "../../shared/model/vehicle/mission.ts";
import type { Vehicle, VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { enduranceAnswer } from "../../shared/vehicle/endurance/enduranceAnswer.ts";
import { tetherBook } from "../../shared/vehicle/motion/tetherBook.ts";
import { propulsionModel } from "../../shared/vehicle/propulsion/propulsionModel.ts";
import { vehicleFacts } from "../../shared/vehicle/propulsion/vehicleNumbers.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS, vehicleFrom } from "./vehicleExample.ts";

type Pack = VehicleInput["supply"]["pack"];
type Legs = readonly { name: string; kind: object; repeats?: number; current?: number; hotelPower?: number }[];
type MissionMore = Partial<Pick<NonNullable<VehicleInput["mission"]>, "reserve" | "startCharge" | "packTemperature">>;

/** Four cells in series that have the 16 V of the outside case at 95 % of their charge. */
export const CELLS = { series: 4, statedCharge: 0.95 } as const;

/** The outside case of a whole vehicle on a pack with a charge, with a mission. */
export function twoThrusters(pack: Partial<Pack>, legs: Legs = [], mission: MissionMore = {}): Vehicle {
  return missionOf(TWO_THRUSTERS, pack, legs, mission);
}

/** Six thrusters on their tether, with doubts of most inputs. */
export function sixThrusters(pack: Partial<Pack>, legs: Legs = [], mission: MissionMore = {}): Vehicle {
  return missionOf(SIX_THRUSTERS, pack, legs, mission);
}

function missionOf(input: VehicleInput, pack: Partial<Pack>, legs: Legs, mission: MissionMore): Vehicle {
  const supply = { pack: { ...input.supply.pack, ...pack } as Pack };
  const asked = legs.length === 0 ? {} : { mission: { ...mission, legs: legs as unknown as MissionLeg[] } };
  return vehicleFrom({ ...input, supply, ...asked });
}

export const swim = (speed: number, duration: number) => ({
  name: `swim ${speed}`,
  kind: { does: "swim", speed, extent: { by: "duration", duration } },
});
export const rest = (duration: number) => ({ name: "rest", kind: { does: "rest", duration } });
export const hold = (duration: number) => ({ name: "hold", kind: { does: "hold", duration } });

/** `enduranceAnswer` of a vehicle alone; `why` no interval can be stated beside its depth. */
export function vehicleEndurance(
  vehicle: Vehicle,
  packs: readonly VehiclePack[] = [],
  why: string | null = null,
): EnduranceAnswer {
  const facts = vehicleFacts(vehicle);
  const tether = tetherBook(vehicle, facts.numbers);
  return enduranceAnswer({ facts, model: propulsionModel(vehicle, facts), tether, packs, why });
}
