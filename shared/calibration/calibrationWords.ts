import type { Instrument, InstrumentRole } from "../model/instrument.ts";
import { combined, known } from "../numeric/combined.ts";
import { formatNumber } from "../quantity/format.ts";
import { coverageFactor } from "../quantity/uncertain.ts";
import type { Calibration, LineFindings } from "./calibration.ts";
import { TOO_RARE } from "./lineCalibration.ts";

/** Part of span from which friction or curvature is worth mending on a home-made stand. Common practice, no source. */
export const WORTH_MENDING = 0.0025;

/** SI unit each channel is told in. */
export const ROLE_UNITS: { readonly [R in InstrumentRole]: string } = {
  thrust: "N",
  torque: "N·m",
  voltage: "V",
  current: "A",
  rotationRate: "rev/s",
};

/** Half-width of the 95 % interval of the factor, relative. */
function relative95({ lineUncertainty, scaleUncertainty, degreesOfFreedom }: Calibration): number {
  return combined([{ standardUncertainty: lineUncertainty, degreesOfFreedom }, ...known(scaleUncertainty)]).expanded95;
}

/** A part (1) in per cent to so many digits. */
export const percent = (part: number, digits = 2): string => `${formatNumber(100 * part, digits)}\u00a0%`;

/** What an instrument is worth, in a sentence or three: factor, zero, shape. ± is half the 95 % interval. */
export function calibrationSentence(instrument: Instrument, calibration: Calibration): string {
  return [`${factorWords(instrument, calibration)}.`, shapeWords(calibration.findings)].filter(Boolean).join(" ");
}

function factorWords({ role, calibration: method }: Instrument, calibration: Calibration): string {
  const si = ROLE_UNITS[role];
  const doubt = relative95(calibration);
  const within = doubt > 0 ? ` ± ${percent(doubt)}` : ", with no doubt stated";
  const factor = `${formatNumber(calibration.factor, doubt > 0 && doubt < 0.001 ? 5 : 4)} ${si}${within}`;
  switch (method.kind) {
    case "deadWeights":
    case "comparison": {
      const zero = coverageFactor(calibration.degreesOfFreedom) * (calibration.zeroUncertainty ?? 0);
      const told = zero > 0 ? `uncertain by ${formatNumber(zero, 2)} ${si}` : "without scatter";
      return `1 ${method.readingUnit || "unit"} of reading is ${factor}; the zero is ${told}`;
    }
    case "torqueArm":
      return `1 ${method.readingUnit} of reading is ${factor}`;
    case "lever":
      return `1 N on the scale is ${factor} at the propeller`;
    case "divider":
      return `1 V at the tap is ${factor} of supply`;
    case "reference":
      return `1 ${si} of reading is ${factor}; the zero was not checked`;
    case "markers":
      return method.pulsesPerTurn === 1
        ? "1 pulse is one turn"
        : `${method.pulsesPerTurn} pulses are one turn: the rate of the log is divided by ${method.pulsesPerTurn}`;
  }
}

function shapeWords(findings: LineFindings | null): string {
  if (findings === null) return "";
  const { hysteresis, nonlinearity } = findings;
  const found: string[] = [];
  if (hysteresis && hysteresis.pValue < TOO_RARE) found.push(frictionWords(hysteresis.partOfSpan));
  if (nonlinearity && nonlinearity.pValue < TOO_RARE) {
    found.push(`The points bend ${percent(nonlinearity.partOfSpan)} of span away from the straight line.`);
  }
  if (found.length > 0) return found.join(" ");
  if (hysteresis === null) return "Friction can not be seen: few loads were read going up and coming down.";
  return nonlinearity ? "Neither friction nor curvature shows." : "Friction does not show.";
}

function frictionWords(partOfSpan: number): string {
  const side = partOfSpan > 0 ? "higher" : "lower";
  const cause =
    Math.abs(partOfSpan) < WORTH_MENDING ? ", too little to matter" : ": friction in the pivot, or a cell that creeps";
  return `Unloading read ${percent(Math.abs(partOfSpan))} of span ${side} than loading${cause}.`;
}
