import type { Instrument } from "../model/instrument.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import type { Calibration, LineFindings } from "./calibration.ts";
import { percent, WORTH_MENDING } from "./calibrationWords.ts";
import { directionsOf } from "./direction.ts";
import { TOO_RARE } from "./lineCalibration.ts";

const FEW_POINTS = 5;

type Told = (findings: LineFindings, where: string) => Warning | null;

/** What a run should know of the instrument it was measured with: the readings themselves look wrong. */
export function shapeWarnings({ name }: Instrument, { findings }: Calibration): Warning[] {
  return findings ? told([hysteresis, curved, outlier], findings, name) : [];
}

/** Everything worth mending in a calibration; the screen of the instrument shows it. */
export function calibrationWarnings(instrument: Instrument, calibration: Calibration): Warning[] {
  const { findings } = calibration;
  const { name } = instrument;
  const method = noTolerance(instrument);
  return [
    ...shapeWarnings(instrument, calibration),
    ...(findings ? told([fewPoints, oneWay], findings, name) : []),
    ...(method ? [method] : []),
  ];
}

function told(checks: readonly Told[], findings: LineFindings, where: string): Warning[] {
  return checks.flatMap((check) => check(findings, where) ?? []);
}

const hysteresis: Told = ({ hysteresis: found }, where) => {
  if (!found || found.pValue >= TOO_RARE || Math.abs(found.partOfSpan) < WORTH_MENDING) return null;
  return warning({
    code: "calibration.hysteresis",
    where,
    found: `unloading read ${percent(Math.abs(found.partOfSpan))} ± ${percent(2 * found.uncertaintyOfPart, 1)} of span ${found.difference > 0 ? "higher" : "lower"} than loading, at ${found.loads} loads that were read both ways`,
    needed: `less than ${percent(WORTH_MENDING)}`,
    mend: "Free the pivot and the cable, let the string run straight, tap the stand before each reading. Half of the difference is counted in the uncertainty",
  });
};

const curved: Told = ({ nonlinearity }, where) => {
  if (!nonlinearity || nonlinearity.pValue >= TOO_RARE || nonlinearity.partOfSpan < WORTH_MENDING) return null;
  return warning({
    code: "calibration.curved",
    where,
    found: `the points bend ${percent(nonlinearity.partOfSpan)} of span away from the straight line`,
    needed: `less than ${percent(WORTH_MENDING)}`,
    mend: "Look whether the lever tilts under load, the cell touches a stop, or the string leaves its right angle; or calibrate only over the range of the runs. The bend is counted in the uncertainty",
  });
};

const outlier: Told = ({ outliers, line, appliedUnit, readingUnit }, where) => {
  if (outliers.length === 0) return null;
  const directions = directionsOf(line.points);
  const names = outliers.slice(0, 3).map((i) => {
    const away = formatNumber(Math.abs(line.residuals[i]!), 2);
    const side = line.residuals[i]! > 0 ? "above" : "below";
    return `point ${i + 1} (${line.points[i]!.applied} ${appliedUnit}, ${directions[i]}) lies ${away} ${readingUnit} ${side} the line`.replace(
      "  ",
      " ",
    );
  });
  const more = outliers.length > 3 ? ` and ${outliers.length - 3} more` : "";
  return warning({
    code: "calibration.outlier",
    where,
    found: `${names.join("; ")}${more}: farther than the scatter of the others explains`,
    needed: "",
    mend: "Look for a slip of the pen or a weight that touched something, and take that point again. It still counts in the line",
  });
};

const fewPoints: Told = ({ line }, where) => {
  if (line.points.length >= FEW_POINTS) return null;
  return warning({
    code: "calibration.few-points",
    where,
    found: `${line.points.length} points leave ${line.degreesOfFreedom} to judge the scatter by`,
    needed: `${FEW_POINTS} or more`,
    mend: "Add weights between zero and the greatest thrust, and read them again on the way down",
  });
};

const oneWay: Told = ({ hysteresis: found }, where) => {
  if (found) return null;
  return warning({
    code: "calibration.one-way",
    where,
    found: "fewer than two loads were read both going up and coming down, so friction can not be seen",
    needed: "the same weights on the way up and on the way down",
    mend: "Take the weights off one by one, reading each time, and add the rows in that order",
  });
};

/** A perfect arm or weight is one that nobody thought about. */
function noTolerance({ name, calibration: method }: Instrument): Warning | null {
  const missing = toleranceMissing(method);
  if (missing.length === 0) return null;
  return warning({
    code: "calibration.no-tolerance",
    where: name,
    found: `no tolerance is given for ${missing.join(" and ")}, so the uncertainty does not contain its error`,
    needed: "a half-width that it surely lies within",
    mend: "Kitchen weights: about 0.5 %; a steel rule: 0.5 mm; common resistors: 1 or 5 %; a hand-held meter: 0.5 to 2 %",
  });
}

function toleranceMissing(method: Instrument["calibration"]): string[] {
  const none = (tolerance: number, what: string) => (tolerance > 0 ? [] : [what]);
  switch (method.kind) {
    case "deadWeights": {
      const arms = [method.lever?.scaleArm, method.lever?.propellerArm, method.arm];
      const bare = arms.some((arm) => arm?.tolerance === 0);
      return [...none(method.appliedTolerance, "the weights"), ...(bare ? ["an arm"] : [])];
    }
    case "lever":
      return [
        ...none(method.readingTolerance, "the scale"),
        ...(method.scaleArm.tolerance === 0 || method.propellerArm.tolerance === 0 ? ["an arm"] : []),
      ];
    case "torqueArm":
      return [...none(method.readingTolerance, "the scale"), ...none(method.arm.tolerance, "the arm")];
    case "comparison":
    case "reference":
      return none(method.appliedTolerance, "the reference meter");
    case "divider":
      return none(method.resistorTolerance, "the resistors");
    case "markers":
      return [];
  }
}
