import { fluidWarnings } from "../fluid/fluidWarnings.ts";
import type { Pack } from "../model/parts/pack.ts";
import type { MissionAnswer } from "../model/vehicle/enduranceAnswer.ts";
import type { MotionWay, SteadyMotion } from "../model/vehicle/motionAnswer.ts";
import { MotionWay as WAYS } from "../model/vehicle/motionAnswer.ts";
import type { VehicleDraws } from "../model/vehicle/requirementAnswer.ts";
import type { Vehicle } from "../model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../model/vehicle/vehicleAnswer.ts";
import { finiteResult } from "../quantity/finiteResult.ts";
import { mergedWarnings } from "../quantity/mergedWarnings.ts";
import type { Warning } from "../quantity/warning.ts";
import { enduranceFound } from "./check/enduranceFound.ts";
import { requirementCheck } from "./check/requirementCheck.ts";
import { enduranceAnswer } from "./endurance/enduranceAnswer.ts";
import { layoutAnswer } from "./layout/layoutAnswer.ts";
import { depthReserve, noIntervalAside, reserveWarnings } from "./motion/depthReserve.ts";
import { designChanges } from "./motion/designChanges.ts";
import { headingPolar } from "./motion/headings.ts";
import { speedOverTether } from "./motion/speedOverTether.ts";
import { notCommanded, type SolvedWay, solvedWay, steadyMotion, type WayQuestion } from "./motion/steadyMotion.ts";
import { tetherAtSpeed } from "./motion/tetherAtSpeed.ts";
import { tetherBook } from "./motion/tetherBook.ts";
import { verticalAnswer } from "./motion/vertical.ts";
import { axisOf } from "./motion/wayForces.ts";
import { mergedWayWarnings } from "./motion/wayWarnings.ts";
import type { VehicleDoubts } from "./propulsion/doubt.ts";
import { spreadOfLinear } from "./propulsion/firstOrder.ts";
import { layoutRequestOf } from "./propulsion/layoutRequestOf.ts";
import { propulsionModel } from "./propulsion/propulsionModel.ts";
import { vehicleDoubts } from "./propulsion/vehicleDoubts.ts";
import { vehicleFacts } from "./propulsion/vehicleNumbers.ts";

const ASSUMPTIONS = [
  "All thrusters and the hotel load share one bus; each thruster works at its own inflow, one that pushes against the motion as at rest.",
  "One wake fraction and one thrust deduction for all thrusters; thrusters do not disturb each other.",
  "No coupling between the drags of the axes; steady motion without turning.",
  "Limits by cavitation and air drawn in are those at rest at the depth of the scenario: a propeller is loaded most at rest.",
  "Up and down the tether is taken in or paid out along itself and pulls as at rest, in the mission too.",
  "Stopping leaves the tether out, which shortens the way where it drags; braking is with the thrust at rest, as nothing is known of a propeller that pushes against the water that comes in.",
  "Idle thrusters cause no drag of their own: it belongs to the drag of the vehicle.",
  "Doubts are carried to first order; the requirement can be drawn beside it.",
];

const OPPOSITE: Readonly<Record<MotionWay, MotionWay>> = {
  ...{ ahead: "astern", astern: "ahead", starboard: "port", port: "starboard", up: "down", down: "up" },
};

/**
 * What a vehicle does: speeds each way, headings in a current, climbing and stopping, what each input adds to the doubt,
 * what changes of the design gain, and whether its requirement is met.
 *
 * `packs` are those to choose from for the mission. With `drawing` the requirement is drawn beside the first order.
 *
 * Source   equilibrium of forces at the hull with all thrusters on one bus; the parts as `busDemand`, `steadySpeed`,
 *          `headingPolar`, `verticalAnswer`, `requirementCheck`, `layoutAnswer`.
 * Assumes  as told in `assumptions` of the answer.
 * Throws   InputProblem and OutOfDomain as `vehicleFacts`, `layoutAnswer` and `checkTether`.
 */
export function vehicleAnswer(
  vehicle: Vehicle,
  drawing: VehicleDraws | null = null,
  packs: readonly Pack[] = [],
): VehicleAnswer {
  const facts = vehicleFacts(vehicle);
  const model = propulsionModel(vehicle, facts);
  const doubts = vehicleDoubts(facts);
  const { numbers } = model;
  const { scenario, requirement } = vehicle;
  const tether = tetherBook(vehicle, numbers);
  const { pullFor } = tether;
  const layoutRequest = layoutRequestOf(facts, model, doubts);
  const layout = layoutAnswer(layoutRequest);
  const solved = solvedWays({ model, doubts, pullFor });
  const { ahead, up, down } = solved;
  const reserve = depthReserve({ model, doubts, up, down });
  const why = noIntervalAside(reserve);
  const motions = motionsOf(solved, doubts, why);
  const climb = requirement?.climb === undefined ? {} : { climbRate: requirement.climb };
  const vertical = verticalAnswer({ ...{ model, doubts, pullFor, depth: scenario.depth, ahead, up, down }, ...climb });
  const shape = tetherAtSpeed(vehicle, numbers, speedFor(ahead, doubts));
  const endurance = enduranceAnswer({ facts, model, tether, packs, why });
  const asked = { vehicle, model, doubts, pullFor, tether, why, endurance: enduranceFound(vehicle, endurance) };
  const check = requirementCheck(asked, drawing);
  const warnings = [
    ...missionWarnings(endurance.mission),
    ...reserveWarnings(reserve),
    ...facts.warnings,
    ...fluidWarnings(vehicle.water),
    ...mergedWayWarnings(motions),
    ...layout.warnings,
    ...(shape?.warnings ?? []),
    ...endurance.warnings,
  ];
  return finiteResult({
    name: vehicle.name,
    sentence: answerSentence(motions[0]!, check?.sentence ?? vertical.sentence, endurance.mission),
    density: numbers.density,
    ...{ supply: facts.supply, drag: facts.axisDrag, layoutRequest, layout, motions },
    headings: ahead && headingPolar({ model, doubts, ahead, vehicle, tether, why }),
    vertical,
    changes: ahead ? designChanges({ doubts, model, ahead, pullFor, why }) : [],
    tetherLimit: ahead && speedOverTether({ vehicle, doubts, ahead, tether, why }),
    ...{ tether: shape, endurance, requirement: check, grounds: [...facts.grounds], assumptions: [...ASSUMPTIONS] },
    converged: layout.converged && Object.values(solved).every((one) => one === null || one.steady.converged),
    warnings: mergedWarnings(warnings),
  });
}

const solvedWays = (question: Omit<WayQuestion, "way">) =>
  Object.fromEntries(WAYS.options.map((way) => [way, solvedWay({ ...question, way })])) as Record<
    MotionWay,
    SolvedWay | null
  >;

/** At the steady speed ahead, or at rest where there is none. */
function speedFor(ahead: SolvedWay | null, doubts: VehicleDoubts) {
  if (ahead?.speed == null) return { value: 0, standardUncertainty: 0 };
  return { value: ahead.speed.value, standardUncertainty: spreadOfLinear(doubts, ahead.speed) };
}

function motionsOf(
  solved: Readonly<Record<MotionWay, SolvedWay | null>>,
  doubts: VehicleDoubts,
  why: string | null,
): SteadyMotion[] {
  return WAYS.options.map((way) => {
    const one = solved[way];
    if (one === null) return notCommanded(way);
    return steadyMotion(doubts, one, solved[OPPOSITE[way]], axisOf(way) === "heave" ? null : why);
  });
}

function answerSentence(ahead: SteadyMotion, then: string, mission: MissionAnswer | null): string {
  const limited = ahead.atSpeed === null ? "" : ` ${ahead.atSpeed.limitedBy.text}`;
  // A mission that fits is told with the endurance; one that does not is what must be known first.
  const mustKnow = mission === null || mission.fits ? "" : `${mission.sentence} `;
  return `${mustKnow}${ahead.sentence}${limited} ${then}`;
}

function missionWarnings(mission: MissionAnswer | null): Warning[] {
  if (mission === null || mission.fits) return [];
  return [{ code: "vehicle.mission-not-done", where: "mission", message: mission.sentence }];
}
