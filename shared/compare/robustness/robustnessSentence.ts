import type { Robustness, RobustnessRow } from "../../model/robustness.ts";
import { inWords } from "../inWords.ts";

type Told = Omit<Robustness, "sentence" | "warnings">;

/** Whether the answer holds, in a sentence or two. */
export function robustnessSentence({ rows, holds, variant, baseline }: Told): string {
  const pair = `${variant} over ${baseline}`;
  const others = rows.slice(1);
  if (holds === null) return `Whether the answer for ${pair} holds can not be told: the runs have too few plateaus.`;
  const against = others.filter(({ agrees }) => agrees === false);
  if (against.length > 0) {
    return `The answer for ${pair} does not hold in every way: ${inWords(against.map(({ title, value }) => `${title} the ratio is ${value!.toFixed(2)}`))}.`;
  }
  const ranges = [
    rangeWords(others.filter(isLeftOut), "whichever run is left out"),
    rangeWords(others.filter(isOtherFit), "by fits that wild plateaus do not pull"),
    rangeWords(
      others.filter((row) => !isLeftOut(row) && !isOtherFit(row)),
      "with other plateaus",
    ),
  ].filter((words) => words !== "");
  return `The answer for ${pair} holds: the ratio is ${ranges.join(", ")}.${lostWords(rows)}`;
}

const isLeftOut = ({ check }: RobustnessRow) => check === "leaveOneOut";
const isOtherFit = ({ check }: RobustnessRow) => check === "huberFit" || check === "medianOfPlateaus";

function rangeWords(rows: readonly RobustnessRow[], when: string): string {
  const values = rows.flatMap(({ value }) => (value === null ? [] : [value]));
  if (values.length === 0) return "";
  const [low, high] = [Math.min(...values).toFixed(2), Math.max(...values).toFixed(2)];
  return `${low === high ? low : `${low} to ${high}`} ${when}`;
}

/** A claim that fewer runs no longer carry. */
function lostWords([answer, ...others]: readonly RobustnessRow[]): string {
  if (answer!.claims === "nothing") return "";
  const lost = others
    .filter(({ check, claims }) => check === "leaveOneOut" && claims === "nothing")
    .map(({ without }) => without!);
  return lost.length === 0 ? "" : ` Without ${lost.join(", or ")} the runs that are left would carry no claim.`;
}
