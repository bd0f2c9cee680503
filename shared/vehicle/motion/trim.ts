import { formatTold } from "../../quantity/told.ts";
import { scaled, type Uncertain } from "../../quantity/uncertain.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom, linearOf, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import { NEWTON } from "../tether/shownUnits.ts";
import type { VerticalQuestion } from "./vertical.ts";
import { netWeight } from "./wayForces.ts";

/** A net force below this share of the thrust is trimmed as well as can be; common practice, no source. */
const TRIMMED = 0.02;
const PERCENT = { symbol: "%", factor: 0.01 };

/** The size of a force whose sign is told in words. */
export const sized = (force: Uncertain): Uncertain => (force.value < 0 ? scaled(force, -1) : force);

/**
 * Whether anything is known of the trim: a net buoyancy of nothing, without doubt, is what is taken where none was weighed.
 */
export const isTrimStated = ({ numbers }: Pick<PropulsionModel, "numbers">, { list }: VehicleDoubts): boolean =>
  numbers.netBuoyancy !== 0 || list.some(({ key }) => key === "netBuoyancy");

/** Force downwards that thrusters must hold to keep the depth at rest, N: net weight and the pull of the tether. */
export function heldAtRest({ model, doubts, pullFor }: Pick<VerticalQuestion, "model" | "doubts" | "pullFor">): Linear {
  const down = (numbers: PropulsionModel["numbers"]) => netWeight({ numbers }) + pullFor(numbers)([0, 0, 0]).force[2];
  return linearOf(doubts, model.numbers, down(model.numbers), (numbers, { of }) =>
    of === "weight" || of === "tether" ? down(numbers) : null,
  );
}

const NOT_STATED =
  "No trim is stated: a net buoyancy of 0 N is taken, as if it hovered without thrust. Hang it on a scale in the water it works in.";

/** What trim is stated or taken, and what it costs to hold the depth with it; `held` as `heldAtRest`. */
export function trimSentence(question: VerticalQuestion, sinking: Uncertain, held: Linear): string {
  const { model, doubts } = question;
  const stated = isTrimStated(model, doubts) ? "" : `${NOT_STATED} `;
  if (held.value === 0) {
    const even = `Without thrust it neither sinks nor floats: ${formatTold(sinking, NEWTON)} by the trim that is stated.`;
    return stated === "" ? even : NOT_STATED;
  }
  const way = (force: number) => (force > 0 ? "sinks" : "floats up");
  const all = formatTold(sized(uncertainOf(doubts, held)), NEWTON);
  if (sinking.value === 0)
    return `${stated}By the pull of the tether it ${way(held.value)} with ${all}${holdingWords(question, held)}`;
  const goes = `${stated}Without thrust it ${way(sinking.value)} with ${formatTold(sized(sinking), NEWTON)}`;
  const towed = held.value === sinking.value ? "" : `; with the pull of the tether it ${way(held.value)} with ${all}`;
  return `${goes}${towed}${holdingWords(question, held)}`;
}

function holdingWords({ model, doubts, up, down }: VerticalQuestion, held: Linear): string {
  if (!model.geometry.held.includes("heave")) return ", and no thruster can hold the depth.";
  const against = held.value > 0 ? up : down;
  const [needed, available] = [Math.abs(held.value), against?.force.value ?? 0];
  if (against === null || needed > available)
    return `, more than the ${against ? formatTold(toldOf(doubts, against.force), NEWTON) : "0 N"} that hold the depth.`;
  const taken = linearFrom(doubts, model.numbers, [held, against.force], ([h, force]) => Math.abs(h!) / force!);
  const end = needed > TRIMMED * available ? "; trim it to save that power" : "";
  return `; ${formatTold(toldOf(doubts, taken), PERCENT)} of the vertical thrust holds the depth${end}.`;
}
