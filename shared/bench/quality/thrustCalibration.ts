import type { QualityCheck } from "../../model/quality.ts";
import { relativeDoubt } from "../appliedCalibration.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, inPercent, passed, percentText, unjudged } from "./verdict.ts";

/** Relative standard uncertainty of a calibration beyond which it says little. Common practice, no source. */
const COARSE = 0.05;

const SUBJECT = {
  code: "bench.thrust-calibration",
  name: "Calibration of the thrust",
  limit: `factor from known weights, its standard uncertainty under ${percentText(COARSE)} (common practice)`,
};

/** Is it known what the scale, with its lever, reads of a known force? Without it no interval contains its error. */
export function thrustCalibration({ channels, used }: Pick<RunFacts, "channels" | "used">): QualityCheck {
  const { thrust } = channels;
  if (thrust.calibration === null && thrust.relativeUncertainty === 0) {
    return unjudged(
      SUBJECT,
      "How far off the scale with its lever reads is not stated, so no interval here contains its own error.",
      "Hang known weights on the stand and state factor and uncertainty, or keep the table as an instrument under Parts and name it.",
    );
  }
  const greatest = Math.max(0, ...used.map(({ measured }) => Math.abs(measured.thrust.mean)));
  const doubt = relativeDoubt(thrust, greatest);
  const measured = inPercent(doubt, { after: " standard uncertainty" });
  const by = thrust.calibration === null ? "what is stated" : `the weights of ${thrust.calibration.instrument.name}`;
  if (doubt <= COARSE)
    return passed(SUBJECT, measured, `By ${by} the greatest thrust is calibrated to ${measured.text}.`);
  return flagged(SUBJECT, {
    measured,
    sentence: `By ${by} the greatest thrust is calibrated only to ${measured.text}.`,
    mend: "Hang more weights, up to the greatest thrust, and weigh them on a better scale.",
  });
}
