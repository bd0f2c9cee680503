import type { VerticalAnswer } from "../../model/vehicle/motionAnswer.ts";
import { formatTold, hasInterval } from "../../quantity/told.ts";
import { busDemand } from "../propulsion/busDemand.ts";
import type { DoubtOf, VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom, linearOf, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import { type PropulsionModel, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { METRE_PER_SECOND, SECOND } from "../tether/shownUnits.ts";
import { terminalSpeed } from "./closedForms.ts";
import { linearNet, type PullFor } from "./linearMotion.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { thrusterLosses } from "./thrusterLost.ts";
import { heldAtRest, isTrimStated, trimSentence } from "./trim.ts";
import { netWeight } from "./wayForces.ts";

/** Climb rate that the greatest payload is told for where none is asked, m/s; common practice, no source. */
const USUAL_CLIMB = 0.1;

export interface VerticalQuestion {
  readonly model: PropulsionModel;
  readonly doubts: VehicleDoubts;
  readonly pullFor: PullFor;
  /** Depth, m. */ readonly depth: number;
  /** m/s. */ readonly climbRate?: number;
  readonly ahead: SolvedWay | null;
  readonly up: SolvedWay | null;
  readonly down: SolvedWay | null;
}

/** Trim, climb, descent, payload, power to hold the depth, and what is left when a thruster or all power is lost. */
export function verticalAnswer(question: VerticalQuestion): VerticalAnswer {
  const { model, doubts, up, down, climbRate = USUAL_CLIMB } = question;
  const sinking = linearFrom(doubts, model.numbers, [], (_, { payload, netBuoyancy }) => payload - netBuoyancy);
  const force = uncertainOf(doubts, sinking);
  const held = heldAtRest(question);
  const payload = up && model.numbers.drag.up ? greatestPayload(question, up, climbRate) : null;
  const ballast = uncertainOf(doubts, { value: 0 - sinking.value, by: sinking.by.map((one) => -one) });
  return {
    ...{ netForce: force, ballast, sentence: trimSentence(question, force, held) },
    climb: up?.speed ? toldOf(doubts, up.speed) : null,
    descent: down?.speed ? toldOf(doubts, down.speed) : null,
    holdPower: holdPower(question),
    holdPowerNeutral: powerToHold(question, ["propulsion"], () => 0),
    greatestPayload: payload && uncertainOf(doubts, payload),
    climbRate,
    withoutPower: withoutPower(question),
    losses: thrusterLosses(question, uncertainOf(doubts, held)),
  };
}

/** Weight in water that is lifted at a rate (m/s): the payload that leaves nothing over at it. */
export function greatestPayload(
  { doubts, pullFor, model }: VerticalQuestion,
  up: SolvedWay,
  climbRate: number,
): Linear {
  const net = linearNet(doubts, up.problem, pullFor, climbRate);
  return linearFrom(doubts, model.numbers, [net], ([left], numbers) => left! + numbers.payload);
}

/** Power from the bus that holds what `heave` asks for on the hull at rest, W; null where it can not be held. */
function powerToHold(
  { model, doubts }: VerticalQuestion,
  touching: readonly DoubtOf[],
  heave: (numbers: VehicleNumbers) => number,
): VerticalAnswer["holdPower"] {
  const power = (numbers: VehicleNumbers) => {
    const solved = busDemand(withNumbers(model, numbers), { direction: { heave: heave(numbers) }, most: 1 });
    return solved.outcome === "held" ? solved.power : null;
  };
  const value = power(model.numbers);
  if (value === null) return null;
  const linear = linearOf(doubts, model.numbers, value, (numbers, { of }) =>
    touching.includes(of) ? power(numbers) : null,
  );
  return toldOf(doubts, linear);
}

function holdPower(question: VerticalQuestion): VerticalAnswer["holdPower"] {
  const { model, pullFor } = question;
  if (!model.geometry.held.includes("heave")) return null;
  return powerToHold(
    question,
    ["propulsion", "weight", "tether"],
    (numbers) => 0 - (netWeight({ numbers }) + pullFor(numbers)([0, 0, 0]).force[2]),
  );
}

function withoutPower({ model, doubts, depth }: VerticalQuestion): VerticalAnswer["withoutPower"] {
  const sinking = netWeight(model);
  if (sinking === 0) {
    return {
      goes: "nowhere",
      speed: null,
      timeToSurface: null,
      text: `Without power it stays at its depth${isTrimStated(model, doubts) ? "" : ", if it is trimmed as is taken"}: it must be fetched or towed.`,
    };
  }
  const goes = sinking > 0 ? ("down" as const) : ("up" as const);
  if (model.numbers.drag[goes] === null) {
    return {
      goes,
      speed: null,
      timeToSurface: null,
      text: `Without power it goes ${goes}; how fast is not known, as its drag is not given.`,
    };
  }
  const speedOf = (numbers: VehicleNumbers) => {
    const { dragArea, linear } = numbers.drag[goes]!;
    const force = Math.max(0, (goes === "down" ? 1 : -1) * (numbers.payload - numbers.netBuoyancy));
    return terminalSpeed({ force, quadratic: 0.5 * numbers.density * dragArea, linear });
  };
  const linear = linearFrom(doubts, model.numbers, [], (_, numbers) => speedOf(numbers));
  const speed = toldOf(doubts, linear);
  const timeToSurface = goes === "up" ? depth / speed.value : null;
  const how = formatTold(speed, METRE_PER_SECOND);
  const after = toldOf(
    doubts,
    linearFrom(doubts, model.numbers, [linear], ([V]) => depth / V!),
  );
  const arrives = hasInterval(speed) ? ` and is at the surface after ${formatTold(after, SECOND)}` : "";
  const text =
    goes === "up"
      ? `Without power it floats up at ${how}${arrives}; a tether that sinks or a line that is caught can keep it down.`
      : `Without power it sinks at ${how}: it must be fetched or towed.`;
  return { goes, speed, timeToSurface, text };
}
