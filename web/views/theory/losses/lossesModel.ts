import { ModelUncertainty } from "../../../../shared/model/finishFit.ts";
import type { LossCause, LossReport } from "../../../../shared/model/lossReport.ts";
import { lossReport } from "../../../../shared/propeller/losses/lossReport.ts";
import { formatUncertain } from "../../../../shared/quantity/format.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { PERCENT } from "../../bench/shownUnits.ts";
import { describedBlade, measuredPoint } from "../describedBlade.ts";
import type { Subject } from "../subject.ts";

export type LossesTold = { readonly report: LossReport } | { readonly problem: string };

/** Where the shaft power of a measured variant goes; or in words what is missing. */
export function lossesTold(subject: Subject | null): LossesTold {
  if (subject === null) return { problem: "Reduce a run on Bench first." };
  const measured = measuredPoint(subject);
  if (measured === null) return { problem: "The shaft power of this variant is not known, so its losses are not." };
  const described = describedBlade(subject.propeller);
  if ("missing" in described) return { problem: described.missing };
  const { advanceRatio: _, ...atRest } = measured;
  try {
    return {
      report: lossReport({
        name: subject.name,
        blade: described.blade,
        fluid: subject.reductions[0]!.fluid,
        rotationRate: subject.topRate,
        measured: atRest,
        ...(subject.staticMerit !== null && subject.staticMerit.value > 0 && { staticMerit: subject.staticMerit }),
        modelUncertainty: ModelUncertainty.parse(undefined),
      }),
    };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

/** "sanded: static merit 0.548 ± 0.009"; empty where it is not known. */
export function meritNote(subject: Subject | null): string {
  if (subject === null || subject.staticMerit === null) return "";
  return `${subject.name}: static merit ${formatUncertain(subject.staticMerit)}`;
}

const CAUSES: Readonly<Record<LossCause, string>> = {
  profile: "Drag of the sections",
  swirl: "Rotation left in the stream",
  tip: "Flow round the tips",
  hub: "Flow round the hub",
  induced: "Uneven load along the blade",
};

/** One bar a cause: its part of the shaft power, the ideal first. */
export function lossBars({ staticMerit, shares }: LossReport) {
  return [
    { name: "The thrust itself, at its ideal", share: staticMerit },
    ...shares.map(({ cause, share }) => ({ name: CAUSES[cause], share })),
  ].map(({ name, share }) => ({
    name,
    percent: Math.max(0, Math.min(100, 100 * share.value)),
    words: formatUncertain(share, PERCENT),
  }));
}
