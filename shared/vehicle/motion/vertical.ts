import type { VerticalAnswer } from "../../model/vehicle/motionAnswer.ts";
import { formatNumber, formatUncertain } from "../../quantity/format.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { busDemand } from "../propulsion/busDemand.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom, uncertainOf } from "../propulsion/firstOrder.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { METRE_PER_SECOND, SECOND } from "../tether/shownUnits.ts";
import { terminalSpeed } from "./closedForms.ts";
import { linearNet, type PullFor } from "./linearMotion.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { forcesAt, isDriven, netWeight } from "./wayForces.ts";

/** Climb rate that the greatest payload is told for where none is asked, m/s; common practice, no source. */
const USUAL_CLIMB = 0.1;
/** A net force below this share of the thrust is trimmed as well as can be; common practice, no source. */
const TRIMMED = 0.02;

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
  const payload = up && model.numbers.drag.up ? greatestPayload(question, up, climbRate) : null;
  const ballast = uncertainOf(doubts, { value: 0 - sinking.value, by: sinking.by.map((one) => -one) });
  return {
    ...{ netForce: force, ballast, sentence: trimSentence(question, sinking.value) },
    climb: up?.speed ? uncertainOf(doubts, up.speed) : null,
    descent: down?.speed ? uncertainOf(doubts, down.speed) : null,
    holdPower: holdPower(question),
    holdPowerNeutral: powerFor(model, {}),
    greatestPayload: payload && uncertainOf(doubts, payload),
    climbRate,
    withoutPower: withoutPower(question),
    losses: lossesOf(question),
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

function trimSentence({ model, up, down }: VerticalQuestion, sinking: number): string {
  if (sinking === 0) return "It is trimmed: without thrust it neither sinks nor floats.";
  const goes = sinking > 0 ? "sinks" : "floats up";
  const by = `${formatNumber(Math.abs(sinking))} N`;
  const against = (sinking > 0 ? up : down)?.steady.atRest.available ?? 0;
  if (!model.geometry.held.includes("heave"))
    return `Without thrust it ${goes} with ${by}, and no thruster can hold the depth.`;
  const needed = Math.abs(sinking);
  if (needed > against)
    return `Without thrust it ${goes} with ${by}, more than the ${formatNumber(against)} N that hold the depth.`;
  const share = formatNumber((100 * needed) / against, 2);
  const end = needed > TRIMMED * against ? "; trim it to save that power" : "";
  return `Without thrust it ${goes} with ${by}; ${share} % of the vertical thrust holds the depth${end}.`;
}

/** Power from the bus that holds a force on the hull at rest, W; null where it can not be held. */
function powerFor(model: PropulsionModel, direction: { readonly heave?: number }): number | null {
  const solved = busDemand(model, { direction, most: 1 });
  return solved.outcome === "held" ? solved.power : null;
}

function holdPower({ model, pullFor }: VerticalQuestion): number | null {
  if (!model.geometry.held.includes("heave")) return null;
  const pull = pullFor(model.numbers)([0, 0, 0]).force[2];
  return powerFor(model, { heave: -(netWeight(model) + pull) + 0 });
}

function withoutPower({ model, doubts, depth }: VerticalQuestion): VerticalAnswer["withoutPower"] {
  const sinking = netWeight(model);
  if (sinking === 0) {
    return {
      goes: "nowhere",
      speed: null,
      timeToSurface: null,
      text: "Without power it stays at its depth: it must be fetched or towed.",
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
  const speed = uncertainOf(
    doubts,
    linearFrom(doubts, model.numbers, [], (_, numbers) => speedOf(numbers)),
  );
  const timeToSurface = goes === "up" ? depth / speed.value : null;
  const how = formatUncertain(speed, METRE_PER_SECOND);
  const relative = speed.standardUncertainty / speed.value;
  const text =
    goes === "up"
      ? `Without power it floats up at ${how} and is at the surface after ${formatUncertain(uncertain(timeToSurface!, relative * timeToSurface!), SECOND)}; a tether that sinks or a line that is caught can keep it down.`
      : `Without power it sinks at ${how}: it must be fetched or towed.`;
  return { goes, speed, timeToSurface, text };
}

/** Rounding of a force, as a part of what it was. */
const ROUNDING = 1e-9;

function lossesOf({ model, ahead, up, down }: VerticalQuestion): VerticalAnswer["losses"] {
  const sinking = netWeight(model);
  const against = sinking > 0 ? up : down;
  const left = (solved: SolvedWay | null, lost: number) => {
    if (solved === null) return 0;
    const holding = forcesAt({ ...solved.problem, lost }, 0);
    // What can not hold its depth any more can still go ahead, on its way up or down.
    const force = (isDriven(holding) ? holding : forcesAt({ ...solved.problem, lost, adrift: true }, 0)).available;
    return force > ROUNDING * solved.steady.atRest.available ? force : 0;
  };
  return model.thrusters.map(({ name }, i) => {
    const [upForce, aheadForce] = [left(up, i), left(ahead, i)];
    const holdsDepth = sinking === 0 || left(against, i) >= Math.abs(sinking);
    const percent = (force: number, solved: SolvedWay | null) =>
      `${formatNumber((100 * force) / (solved?.steady.atRest.available || 1), 2)} %`;
    const parts = [
      ...(ahead
        ? [aheadForce === 0 ? "no force ahead is left" : `${percent(aheadForce, ahead)} of the force ahead is left`]
        : []),
      ...(up
        ? [upForce === 0 ? "none upwards with the other motions at zero" : `${percent(upForce, up)} upwards`]
        : []),
    ].join(", ");
    const goes = `${sinking > 0 ? "sinks" : "floats up"} with ${formatNumber(Math.abs(sinking))} N`;
    const depth = holdsDepth ? "" : `; it can not hold its depth and ${goes}`;
    return {
      thruster: name,
      up: upForce,
      ahead: aheadForce,
      holdsDepth,
      sentence: `Without ${name} ${parts || "nothing is lost"}${depth}.`,
    };
  });
}
