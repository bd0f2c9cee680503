import { STANDARD_GRAVITY } from "../../quantity/constants.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { RunFacts } from "../runFacts.ts";
import { POSSIBLE } from "./coefficientChecks.ts";

/** A propeller at rest with less than this is stalled, back to front or misread. Common practice, no source. */
const POOREST = 0.15;

/** Merit of an ordinary small propeller at rest, against which slips are weighed. Common practice, no source. */
const USUAL = { low: 0.3, middle: 0.5, high: 0.8 };

/** What a slip does to the thrust reading: measured = true × factor. Common practice, no source. */
const THRUST_SLIPS = [
  { name: "newton read as gram-force", factor: STANDARD_GRAVITY / 1000 },
  { name: "kilogram-force read as newton", factor: 1 / STANDARD_GRAVITY },
  { name: "pound-force read as newton", factor: 1 / (0.45359237 * STANDARD_GRAVITY) },
  { name: "a lever ratio of 2 left out", factor: 1 / 2 },
];

/** A static merit too low for a propeller that works; a coefficient that no propeller has is told on its own. */
export function lowMerit({ merit, thrust, used }: RunFacts): Warning[] {
  const K = thrust.fit.coefficient;
  const isAtRest = used.every(({ advance }) => !advance);
  if (merit === null || !isAtRest || K < POSSIBLE.low || K > POSSIBLE.high) return [];
  if (merit.value + 2 * merit.standardUncertainty >= POOREST) return [];
  const short = formatNumber((USUAL.middle / merit.value) ** (2 / 3), 2);
  return [
    warning({
      code: "bench.merit-below-usual",
      where: "static merit",
      found: `the static merit is ${formatNumber(merit.value)}; a usual one would need ${short} times the thrust, or ${formatNumber(USUAL.middle / merit.value, 2)} times less shaft power`,
      needed: `more than ${POOREST}; small propellers at rest have about ${USUAL.low} to ${USUAL.high}`,
      mend: `Likely: ${[...unitSlips(merit.value), "a propeller back to front or turning astern", "air drawn down from the surface", "friction in the pivot of the stand", "a current or torque scale that reads high"].join("; ")}`,
    }),
  ];
}

/** Merit goes with the thrust to the power 1.5 at a given shaft power. */
function unitSlips(merit: number): string[] {
  return THRUST_SLIPS.map(({ name, factor }) => ({ name, corrected: merit / factor ** 1.5 }))
    .filter(({ corrected }) => corrected >= USUAL.low && corrected <= USUAL.high)
    .map(({ name, corrected }) => `${name} (the merit would be ${formatNumber(corrected, 2)})`);
}
