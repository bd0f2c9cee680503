import type { AdvanceFit } from "../../model/advance.ts";
import { formatUncertain } from "../../quantity/format.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";

/** What a run with advance speed says, in one sentence: thrust at rest, its zero, and the best efficiency. */
export function advanceSentence({
  thrustCoefficient: atRest,
  advance,
}: {
  thrustCoefficient: Uncertain;
  advance: AdvanceFit;
}): string {
  const { zeroThrust, peak, bollard, range, samples } = advance;
  const rest = `${formatUncertain(atRest)} at rest${bollard === "extrapolated" ? " (continued)" : ""}`;
  const last = samples.at(-1)!.thrustCoefficient;
  const fall = zeroThrust
    ? `zero at J = ${formatUncertain(zeroThrust.advanceRatio)}${zeroThrust.isExtrapolated ? " (continued)" : ""}`
    : `${formatUncertain(last)} at J = ${range[1].toFixed(2)}, the fastest plateau`;
  const best = peak ? `; ${bestOf(peak)}` : "";
  return `K_T falls from ${rest} to ${fall}${best}.`;
}

function bestOf({ efficiency, advanceRatio, isAtEdge }: NonNullable<AdvanceFit["peak"]>): string {
  if (isAtEdge)
    return `the efficiency is ${formatUncertain(efficiency)} at J = ${advanceRatio.value.toFixed(2)}, where the plateaus end, and the best may lie beyond`;
  return `the best efficiency is ${formatUncertain(efficiency)} at J = ${formatUncertain(advanceRatio)}`;
}

/** Order of a curve and who chose it. */
export function orderWords({ order, orderFrom }: AdvanceFit["thrustCurve"]): string {
  if (orderFrom === "stated") return `order ${order}, as stated`;
  if (orderFrom === "fewPoints") return `order ${order}: there are too few plateaus to judge a higher one`;
  return `order ${order}, the lowest that the corrected information criterion finds as good as the best`;
}
