import type { LegAnswer } from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import type { MotionWay, VerticalAnswer } from "../../../../shared/model/vehicle/motionAnswer.ts";
import type { DemandCheck } from "../../../../shared/model/vehicle/requirementAnswer.ts";
import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { atMostWords, isAtMost } from "../../../../shared/vehicle/motion/wayWarnings.ts";
import { capitalised, joined } from "../../../app/words.ts";
import { METRE, NEWTON, SECOND, WATT } from "../../bench/shownUnits.ts";
import { METRE_PER_SECOND, MINUTE, shown, shownUncertain } from "./units.ts";

/** What the screen and the report say in the same words. */

/** A row is headed by what is asked; its sentence need not begin with it once more. */
export function demandText({
  name,
  sentence,
  limitedBy,
}: Pick<DemandCheck, "name" | "sentence" | "limitedBy">): string {
  const own = sentence.startsWith(`${name}: `) ? capitalised(sentence.slice(name.length + 2)) : sentence;
  // What bounds it has its own cell.
  const end = ` ${limitedBy?.text}`;
  return limitedBy && own.endsWith(end) ? own.slice(0, -end.length) : own;
}

export const legTime = ({ time }: Pick<LegAnswer, "time">): string =>
  shown(time, time < MINUTE.factor ? SECOND : MINUTE);

/** The numbers of a leg stand in its row; what is left to say is how far it went, or why not. */
export function legText({ state, distance, sentence }: Pick<LegAnswer, "state" | "distance" | "sentence">): string {
  if (state !== "done") return sentence;
  return distance === 0 ? "done" : `done, ${shown(distance, METRE)}`;
}

/** Trim, lift, climb and descent, and the power to hold the depth. */
export function verticalRows(
  vertical: VerticalAnswer,
  motions: VehicleAnswer["motions"],
): { readonly name: string; readonly value: string }[] {
  const { netForce, ballast, climb, descent, holdPower, holdPowerNeutral, greatestPayload, climbRate } = vertical;
  const most = (way: MotionWay, speed: VerticalAnswer["climb"]) =>
    atMostWords(
      shownUncertain(speed, METRE_PER_SECOND),
      speed !== null && motions.some((one) => one.way === way && isAtMost(one.warnings)),
    );
  return [
    { name: "Net force without thrust, payload aboard, down positive", value: shownUncertain(netForce, NEWTON) },
    { name: "Ballast to neither float nor sink", value: shownUncertain(ballast, NEWTON) },
    { name: "Climbs at", value: most("up", climb) },
    { name: "Descends at", value: most("down", descent) },
    { name: "Power to hold the depth, hotel load included", value: shownUncertain(holdPower, WATT) },
    { name: "The same trimmed to nothing", value: shownUncertain(holdPowerNeutral, WATT) },
    {
      name: `Greatest payload, its weight in water, at a climb of ${shown(climbRate, METRE_PER_SECOND, 2)}`,
      value: shownUncertain(greatestPayload, NEWTON),
    },
  ];
}

/** How doubtful the shares are that a lost thruster leaves. */
export function lossesNote(motions: VehicleAnswer["motions"]): string {
  const of = (way: MotionWay, words: string) => {
    const force = motions.find((one) => one.way === way)?.force ?? null;
    return force === null || force.value === 0 ? [] : [`${shownUncertain(force, NEWTON)} ${words}`];
  };
  const whole = joined([...of("ahead", "ahead"), ...of("up", "upwards")]);
  return `Shares of the force with all thrusters, both within the current of the bus, which fewer thrusters leave more to each; best estimates${whole === "" ? "" : `; the whole is ${whole}, and what is left is as doubtful, relative to itself`}.`;
}
