import type { QualityCheck } from "../../model/quality.ts";
import { powerMisfitMend, powerTrendInWords } from "../checks/powerLawChecks.ts";
import { powerMisfit } from "../misfit.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, passed, percentText, unjudged } from "./verdict.ts";

const SUBJECT = {
  code: "bench.power-law",
  name: "Shaft power with speed",
  limit:
    "C_P changes by less than 5\u202f% from the slowest to the fastest plateau, or by no more than chance (common practice)",
};

/** Does one power coefficient hold at all speeds of the run? */
export function powerLaw(facts: RunFacts): QualityCheck {
  const misfit = powerMisfit(facts);
  if (misfit === null) return untold(facts);
  const measured = {
    value: 100 * misfit.change,
    unit: "%",
    text: `C_P ${percentText(misfit.change, true)} from the slowest to the fastest plateau, scatter ${percentText(misfit.scatter)}`,
  };
  if (misfit.kind === "none") return passed(SUBJECT, measured, "One power coefficient holds at all speeds of the run.");
  const scatter = `C_P scatters by ${percentText(misfit.scatter)} among the plateaus, more than their readings explain`;
  return flagged(SUBJECT, {
    measured,
    sentence: `${misfit.kind === "trend" ? powerTrendInWords(misfit) : scatter}.`,
    mend: `${powerMisfitMend(misfit, facts)}.`,
  });
}

function untold({ power, advance, sweep }: RunFacts): QualityCheck {
  if (power === null) {
    return unjudged(
      SUBJECT,
      "The shaft power is not known.",
      "Log torque, or voltage and current with the motor's constants stated.",
    );
  }
  return unjudged(
    SUBJECT,
    advance || sweep
      ? "Shaft power is only compared between plateaus at rest in the water."
      : "Shaft power is known at too few plateaus, or they turn too nearly at one speed.",
    "Hold four steps or more at rest, from half the top speed, or less, to full speed.",
  );
}
