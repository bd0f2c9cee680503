import { formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { plateauName } from "../judgedPlateau.ts";
import type { RunFacts } from "../runFacts.ts";

/** Relative standard deviation of the rotation rate beyond which a plateau set by hand is told to hold more than one state. */
const UNEVEN = 0.02;
const BY_HAND: ReadonlySet<string> = new Set(["moved", "split", "merged", "added", "hand"]);

/** A person's plateaus are taken as they are; one that holds a step or a run-up is told, not left out. */
export function handPlateauChecks({ used }: RunFacts): Warning[] {
  return used.flatMap((plateau) => {
    const { span, rotationRate } = plateau.measured;
    const part = rotationRate.standardDeviation / rotationRate.mean;
    if (!BY_HAND.has(span.foundBy) || part <= UNEVEN) return [];
    return [
      warning({
        code: "bench.uneven-by-hand",
        where: plateauName(plateau),
        found: `the rotation rate varies by ${formatPercent(part)} within this plateau, which was set by hand`,
        needed: "one steady state",
        mend: "Split it where the rate steps, or move its edge past the run-up",
      }),
    ];
  });
}
