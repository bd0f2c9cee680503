import type { QualityCheck } from "../../model/quality.ts";
import { bladeReynolds } from "../../propeller/coefficients.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, passed, unjudged } from "./verdict.ts";

/** Least blade Reynolds number of a standard open water test, ITTC 7.5-02-03-02.1 (from memory). */
const TRUSTED = 2e5;
/** Below this, published static tests of small propellers are few: Deters, Ananda & Selig, AIAA 2014-2151, reach 5 to 80 thousand. */
const HARDLY_PUBLISHED = 2e4;
/** Chord at 0.7 R over diameter of slender and of broad blades, where none is stated. Common practice, no source. */
const CHORD_PART = { slender: 0.08, broad: 0.35 };

const SUBJECT = {
  code: "bench.reynolds-range",
  name: "Blade Reynolds number",
  limit: `at least ${inThousands(TRUSTED)} (ITTC 7.5-02-03-02.1)`,
};

/** Is the flow over the blades that of larger propellers, or does the coefficient hang on the speed? */
export function reynoldsRange(facts: Pick<RunFacts, "used" | "propeller" | "fluid">): QualityCheck {
  const { chordAt07, diameter } = facts.propeller;
  if (chordAt07 !== undefined) return judged(facts, chordAt07, "");
  const [slender, broad] = [CHORD_PART.slender, CHORD_PART.broad].map((part) => part * diameter);
  if (lowestAndHighest(facts, slender!)[0] >= TRUSTED)
    return judged(facts, slender!, ", estimated for a slender blade");
  if (lowestAndHighest(facts, broad!)[0] < TRUSTED) return judged(facts, broad!, ", estimated for a broad blade");
  return unjudged(
    SUBJECT,
    "The chord of the blade is not stated.",
    "Measure the chord at 0.7 of the radius and give it with the propeller.",
  );
}

function judged(facts: Pick<RunFacts, "used" | "propeller" | "fluid">, chord: number, how: string): QualityCheck {
  const [lowest, highest] = lowestAndHighest(facts, chord);
  const measured = { value: lowest, unit: "1", text: `${inThousands(lowest)} to ${inThousands(highest)}${how}` };
  if (lowest >= TRUSTED)
    return passed(SUBJECT, measured, "The flow over the blades is in the usual range of open water tests.");
  const far = highest < HARDLY_PUBLISHED;
  return flagged(SUBJECT, {
    measured,
    sentence: `The blade Reynolds number goes from ${measured.text}: ${
      far
        ? "hardly any published measurement is so low, and nothing can be carried over"
        : "there the coefficients change with speed and finish"
    }.`,
    mend: `Compare propellers at equal rotation rate, and do not carry the coefficient over to other sizes or speeds.${how && " State the chord at 0.7 of the radius with the propeller to replace the estimate."}`,
  });
}

function lowestAndHighest({ used, propeller, fluid }: Pick<RunFacts, "used" | "propeller" | "fluid">, chord: number) {
  const numbers = used.map(({ measured }) =>
    bladeReynolds({
      chord,
      diameter: propeller.diameter,
      rotationRate: measured.rotationRate.mean,
      advanceSpeed: 0,
      kinematicViscosity: fluid.kinematicViscosity,
    }),
  );
  return [Math.min(...numbers), Math.max(...numbers)] as const;
}

function inThousands(value: number): string {
  return `${formatNumber(value / 1000, 2)} thousand`;
}
