import type { Warning } from "../../../../shared/quantity/warning.ts";
import { plainMessage } from "../../../app/plainMessage.ts";
import { together } from "../../../app/together.ts";
import type { ShownPrediction } from "./shownPrediction.ts";

export interface PredictionNotes {
  /** What is to be known of one prediction alone, by its name. */
  readonly own: ReadonlyMap<string, readonly string[]>;
  /** What holds for several, each said once with what it holds for. */
  readonly shared: readonly string[];
}

/**
 * What a reader must know of the predictions, of blade elements at a rotation rate (rev/s) at rest; ten of one series do not
 * say the same ten times.
 */
export function predictionNotes(all: readonly ShownPrediction[], rotationRate: number): PredictionNotes {
  const own = new Map<string, readonly string[]>();
  const shared: string[] = [];
  const series = all.filter(({ prediction }) => prediction.source.kind === "series");
  for (const [text, names] of together(
    all,
    ({ prediction }) => prediction.name,
    (shown) => warningsOf(shown, rotationRate).map(plainMessage),
  )) {
    const [first] = names;
    if (names.length === 1) own.set(first!, [...(own.get(first!) ?? []), text]);
    else {
      const isOfSeries =
        series.every(({ prediction }) => names.includes(prediction.name)) && names.length === series.length;
      shared.push(`${isOfSeries ? "Published series" : names.join("; ")}: ${text}`);
    }
  }
  return { own, shared };
}

function warningsOf({ predictor }: ShownPrediction, rotationRate: number): readonly Warning[] {
  if (predictor === null) return [];
  const atRest = predictor.at({ rotationRate, advanceSpeed: 0 });
  return [...predictor.warnings, ...(atRest.state === "known" ? atRest.warnings : [])];
}
