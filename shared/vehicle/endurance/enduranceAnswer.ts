import type { Pack } from "../../model/parts/pack.ts";
import type { EnduranceAnswer, MissionAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { steadySpeed } from "../motion/steadySpeed.ts";
import type { TetherBook } from "../motion/tetherBook.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type PropulsionModel, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleFacts, VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { type Battery, type BatteryFacts, batteryOf } from "./battery.ts";
import { idealEnergy } from "./batteryEnergy.ts";
import { type Changing, enduranceDoubts } from "./enduranceDoubts.ts";
import { holdingMap, type MapSize } from "./holdingMap.ts";
import { isHotelStated } from "./hotelLoad.ts";
import { missionAnswer, type SolvedMission } from "./missionAnswer.ts";
import { packAdvice } from "./packAdvice.ts";
import { type Drawing, drawing, type Leg } from "./plan.ts";
import { pullBook, squarePulls } from "./pullBook.ts";
import { type SolvedSpeeds, speedAnswer } from "./speedAnswer.ts";
import { unmovedBattery } from "./unmovedBattery.ts";

export interface EnduranceQuestion {
  readonly facts: VehicleFacts;
  readonly model: PropulsionModel;
  readonly tether: TetherBook;
  /** Packs to choose from. */ readonly packs: readonly Pack[];
  /** Why no interval can be stated of what is done while the depth is held; null where one can, and if absent. */
  readonly why?: string | null;
  /** Size of the map of holding a place; from the scenario and the speed ahead if absent. */
  readonly map?: MapSize;
}

/** Usual reserve where no mission states one. */
const RESERVE = 0.2;
/** Powers between the first and the last voltage in a straight line, for what is drawn as curves and maps. */
const OF_PICTURES = { orders: [1] };

/** Steps of 30°, and enough speeds to draw between. */
const COARSE_MAP = { speeds: 6, headings: 6 };

/**
 * What a vehicle does on the charge of its pack: its mission, time and range over speed, holding a place, and packs.
 *
 * Assumes  see `assumptions` of the answer.
 * Throws   as `propulsionModel` and `tetherPulls`.
 */
export function enduranceAnswer({ facts, model, tether, packs, why = null, map }: EnduranceQuestion): EnduranceAnswer {
  const { vehicle } = facts;
  const { mission } = vehicle;
  const found = batteryOf(vehicle, mission ?? { reserve: RESERVE });
  const { battery, temperature, warnings } = found ?? unmovedBattery(facts);
  const drawn = { model, vehicle, battery, pulls: pullBook(tether) };
  const changing: Changing = { ...drawn, facts, doubts: enduranceDoubts(facts, battery, temperature), why };
  const on = drawing(drawn);
  const solved = mission && found ? missionAnswer(on, changing, mission) : null;
  const speed = speedAhead(on);
  const speeds = found && speed > 0 ? speedAnswer(drawing(drawn, OF_PICTURES), changing, speed) : null;
  const greatestCurrent = Math.max(1.25 * facts.numbers.currentSpeed, 1.1 * speed);
  const size = map ?? { ...COARSE_MAP, greatestCurrent };
  const holding =
    size.greatestCurrent > 0
      ? holdingMap(drawing({ ...drawn, pulls: squarePulls(tether) }, OF_PICTURES), size, {
          timed: found !== null,
          doubts: changing.doubts,
        })
      : null;
  return {
    sentence: wholeSentence(solved?.answer ?? null, speeds, found),
    charge: found && chargeOf(battery),
    ...{ resistance: battery.resistance, temperature },
    ...{ mission: solved?.answer ?? null, speeds: speeds?.answer ?? null, holding },
    packs: mission && solved ? packAdvice(drawn, mission, { packs, neededCharge: solved.answer.neededCharge }) : null,
    assumptions: ASSUMPTIONS,
    converged: (solved?.converged ?? true) && (speeds?.converged ?? true),
    warnings: [
      ...warnings,
      ...hotelWarnings(facts.numbers, changing.doubts, found),
      ...weightWarnings(solved),
      ...coarse(solved, speeds),
    ],
  };
}

/** Steady speed ahead at full thrust on the charge at the start, m/s; 0 where it does not go ahead. */
function speedAhead({ model, vehicle, battery, pulls }: Drawing): number {
  if (model.numbers.drag.ahead === null || !model.geometry.held.includes("surge")) return 0;
  const supply = { openCircuitVoltage: battery.openCircuitVoltage(battery.start), resistance: battery.resistance };
  const full = withNumbers(model, { ...model.numbers, supply });
  const current = { speed: full.numbers.currentSpeed, from: vehicle.scenario.currentFrom };
  return steadySpeed({ model: full, way: "ahead", pull: (velocity) => pulls(full.numbers, { velocity, current }) })
    .speed;
}

function chargeOf(battery: Battery): EnduranceAnswer["charge"] {
  const { rated, start, floor } = battery;
  const usable = rated * Math.max(0, start - floor);
  return { rated, start, reserve: floor, usable, energy: idealEnergy(battery, start, floor) };
}

const ASSUMPTIONS: string[] = [
  "The bus is in its steady state at every moment; time to speed up and turn is left out.",
  "The rated charge can be drawn at any current, and the resistance of the pack does not change with its charge.",
  "The drags of the three axes do not know of each other.",
  "While it changes depth the vehicle drifts with the current; swimming, its distance is counted along the bow.",
  "With the thrusters off the controllers still draw what they draw by themselves.",
];

function wholeSentence(mission: MissionAnswer | null, speeds: SolvedSpeeds | null, found: BatteryFacts | null): string {
  if (found === null) return "The charge of the pack is not stated, so that no time can be told.";
  const range = speeds?.answer.bestRange?.sentence ?? "It makes no way ahead on this charge.";
  return mission === null ? range : `${mission.sentence} ${range}`;
}

function hotelWarnings(numbers: VehicleNumbers, doubts: VehicleDoubts, found: BatteryFacts | null): Warning[] {
  if (found === null || isHotelStated(numbers, doubts)) return [];
  return [
    warning({
      code: "vehicle.hotel-load-not-stated",
      where: "hotelPower",
      found: "No hotel load is stated: 0 W is taken for lamps, camera and computer",
      needed: "the power that they take all the time",
      mend: "Measure it; it shortens the times most where the vehicle goes slowly",
    }),
  ];
}

function weightWarnings(solved: SolvedMission | null): Warning[] {
  const leg = (solved?.legs ?? []).find(({ needs }: Leg) => needs.weightNotHeld !== 0);
  if (leg === undefined) return [];
  return [
    warning({
      code: "vehicle.endurance-weight-not-held",
      where: `mission.legs: ${leg.leg.name}`,
      found: `A net force of ${formatNumber(Math.abs(leg.needs.weightNotHeld))} N ${leg.needs.weightNotHeld > 0 ? "down" : "up"} has no thruster against it, and costs nothing in this account`,
      needed: "a vehicle in trim, or a thruster that pushes up and down",
      mend: "Trim it with ballast; held by pitch or fins it costs more than is told",
    }),
  ];
}

function coarse(solved: SolvedMission | null, speeds: SolvedSpeeds | null): Warning[] {
  if ((solved?.converged ?? true) && (speeds?.converged ?? true)) return [];
  return [
    warning({
      code: "vehicle.endurance-not-converged",
      where: "mission",
      found: "A power over the charge, or a search in it, did not come as close as it should",
      needed: "",
      mend: "Take the last digits with care; a thruster that reaches a limit within the mission is the usual cause",
    }),
  ];
}
