import { shapeWarnings } from "../../calibration/calibrationWarnings.ts";
import { ROLE_UNITS } from "../../calibration/calibrationWords.ts";
import { ROLE_DIMENSIONS } from "../../log/roleUnits.ts";
import { InstrumentRole } from "../../model/instrument.ts";
import { formatNumber } from "../../quantity/format.ts";
import { findUnit } from "../../quantity/unit.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { Channel } from "../channels.ts";
import type { RunFacts } from "../runFacts.ts";

/** Beyond the calibrated range by this part of it a straight line is a hope. */
const SLACK = 0.05;

/** Whether the instruments of a run fit what the run asks of them. */
export function calibrationChecks(facts: RunFacts): Warning[] {
  return InstrumentRole.options.flatMap((role) => {
    const channel = facts.channels[role];
    if (!channel?.calibration) return [];
    const { calibration } = channel;
    return [
      ...shapeWarnings(calibration.instrument, calibration),
      ...(beyondRange(facts, role, channel) ?? []),
      ...(otherUnit(facts, role, channel) ?? []),
    ];
  });
}

function beyondRange({ used }: RunFacts, role: InstrumentRole, { calibration, header }: Channel): Warning[] | null {
  const range = calibration?.range;
  const values = used.flatMap(({ measured }) => measured[role]?.mean ?? []);
  if (!range || values.length === 0) return null;
  const [low, high] = range;
  const slack = SLACK * (high - low);
  const farthest = values.reduce((far, value) => (distance(value, range) > distance(far, range) ? value : far));
  if (farthest >= low - slack && farthest <= high + slack) return null;
  const unit = ROLE_UNITS[role];
  return [
    warning({
      code: "bench.beyond-calibration",
      where: `column ${header}`,
      found: `the run goes to ${formatNumber(farthest)} ${unit}, and the instrument ${calibration.instrument.name} was calibrated from ${formatNumber(low)} to ${formatNumber(high)} ${unit}`,
      needed: "a calibration that covers the run: beyond it the straight line is only assumed",
      mend: "Calibrate again up to the greatest value of the run",
    }),
  ];
}

function distance(value: number, [low, high]: readonly [number, number]): number {
  return Math.max(low - value, value - high);
}

function otherUnit({ table }: RunFacts, role: InstrumentRole, channel: Channel): Warning[] | null {
  const { calibration, column, header } = channel;
  if (!calibration || calibration.readingFactor !== null) return null;
  const method = calibration.instrument.calibration;
  const asked = "readingUnit" in method ? method.readingUnit : "";
  const written = table.shape.columns[column]?.unit ?? "";
  if (written === asked || findUnit(written, ROLE_DIMENSIONS[role]) === undefined) return null;
  return [
    warning({
      code: "bench.calibrated-in-other-unit",
      where: `column ${header}`,
      found: `the log says ${written}, and the instrument ${calibration.instrument.name} was calibrated in ${asked || "numbers without unit"}: the numbers of the log were taken as they are written`,
      needed: "a calibration whose readings are the numbers that the logger writes",
      mend: "Check that the same number stands in the calibration table and in the log for the same load",
    }),
  ];
}
