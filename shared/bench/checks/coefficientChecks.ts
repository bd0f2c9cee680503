import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { RunFacts } from "../runFacts.ts";
import { likelyCauses } from "./likelyCauses.ts";

/** Beyond these no propeller works at rest; nozzles reach about 0.7. Common practice, no source. */
export const POSSIBLE = { low: 0.01, high: 1.2 };

/** A thrust coefficient that no propeller has, or one below zero. */
export function coefficientChecks(facts: RunFacts): Warning[] {
  return [negativeThrust(facts), impossibleSize(facts)].filter((found) => found !== null);
}

function negativeThrust({ thrust, channels }: RunFacts): Warning | null {
  const K = thrust.fit.coefficient;
  if (K >= 0) return null;
  return warning({
    code: "bench.negative-thrust",
    where: `column ${channels.thrust.header}`,
    found: `the thrust coefficient is ${formatNumber(K)}: the reading falls as the propeller speeds up`,
    needed: "a thrust that counts as positive forward",
    mend: "If the load cell is mounted the other way, turn the sign round (correction factor -1); if the run was in reverse, the value is right as it stands",
  });
}

function impossibleSize({ thrust, propeller, used, channels }: RunFacts): Warning | null {
  const K = thrust.fit.coefficient;
  const size = Math.abs(K);
  if (size >= POSSIBLE.low && size <= POSSIBLE.high) return null;
  const fastest = used.reduce((a, b) => (a.measured.rotationRate.mean > b.measured.rotationRate.mean ? a : b)).measured;
  const causes = likelyCauses(K);
  return warning({
    code: "bench.impossible-coefficient",
    where: `columns ${channels.thrust.header} and ${channels.rotationRate.header}`,
    found: `${formatNumber(fastest.thrust.mean)} N at ${formatNumber(fastest.rotationRate.mean * 60)} rpm from a ${formatNumber(propeller.diameter * 1000)} mm propeller is a thrust coefficient of ${formatNumber(K)}`,
    needed: `${POSSIBLE.low} to ${POSSIBLE.high}; propellers at rest have about 0.1 to 0.6`,
    mend:
      causes.length > 0
        ? `Likely: ${causes.join("; ")}`
        : "Check the units of thrust and rotation rate, the lever ratio and the diameter",
  });
}
