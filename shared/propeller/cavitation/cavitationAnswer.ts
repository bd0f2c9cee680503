import type { BurrillVerdict, CavitationResult } from "../../model/cavitation.ts";
import { formatNumber } from "../../quantity/format.ts";
import { CHART_END } from "./burrill.data.ts";

type Judged = Pick<CavitationResult, "lines" | "ventilation" | "cavitationNumber" | "depthFreeOfVentilation">;

const AIR = {
  likely: "It is likely to draw air",
  possible: "It may draw air through vortices",
  unlikely: "It is unlikely to draw air",
} as const;

/** The answer to "does it cavitate or draw air?" in two short sentences. */
export function cavitationAnswer(judged: Judged): string {
  const { verdict } = judged.ventilation;
  const depth =
    verdict === "unlikely"
      ? ""
      : `; from a shaft depth of ${formatNumber(judged.depthFreeOfVentilation)} m the mean flow can not pull the surface down to it`;
  return `${cavitates(judged)} ${AIR[verdict]}${depth}.`;
}

function cavitates({ lines, cavitationNumber: sigma }: Judged): string {
  const worst = [...BACK_LINES]
    .reverse()
    .map((name) => stateOf(lines, name))
    .find(({ state }) => state === "above" || state === "near");
  if (worst) return `${worst.state === "near" ? "On the edge:" : "It cavitates:"} ${worst.meaning}.`;
  const unjudged = BACK_LINES.map((name) => stateOf(lines, name)).filter(({ state }) => state === "unjudged");
  if (unjudged.length === 0) return "Under all limit lines: less than about 2.5 % of the back cavitates.";
  return `At a cavitation number of ${formatNumber(sigma, 2)} it lies beyond the chart, which ends near ${CHART_END}, on the safe side; single spots may cavitate.`;
}

/** Lines that tell how much of the back cavitates, from little to much. */
const BACK_LINES = ["light", "merchant", "fast"] as const;

function stateOf(lines: readonly BurrillVerdict[], name: BurrillVerdict["line"]): BurrillVerdict {
  return lines.find(({ line }) => line === name)!;
}
