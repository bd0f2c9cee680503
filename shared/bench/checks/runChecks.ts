import { median } from "../../numeric/median.ts";
import { bladeReynolds } from "../../propeller/coefficients.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { RunFacts } from "../runFacts.ts";
import { segmentOf } from "../tareLine.ts";

/** Below this blade Reynolds number the boundary layer is mostly laminar and coefficients change with speed; ITTC 7.5-02-03-01.4. */
const LOW_REYNOLDS = 2e5;

/** What a reader should know of how the run was taken. */
export function runChecks(facts: RunFacts): Warning[] {
  return [
    glitches(facts),
    wildReadings(facts),
    deadBand(facts),
    ramps(facts),
    unsettled(facts),
    settledTooLate(facts),
    leftOut(facts),
    unusableSpans(facts),
    borrowedTare(facts),
    oneTare(facts),
    singleReadings(facts),
    motorConstants(facts),
    lowReynolds(facts),
  ].filter((found) => found !== null);
}

function glitches({ plateaus }: RunFacts): Warning | null {
  const hit = plateaus.filter(({ measured }) => measured.glitches.count > 0);
  const first = hit[0]?.measured.glitches.first;
  if (!first) return null;
  const count = hit.reduce((sum, { measured }) => sum + measured.glitches.count, 0);
  const places = `${hit.length} ${hit.length === 1 ? "plateau" : "plateaus"}`;
  const what =
    count === 1
      ? `1 reading in ${places} lies far outside the others and was left out of the mean: ${first.reading}`
      : `${count} readings in ${places} lie far outside the others and were left out of the means; the first is ${first.reading}`;
  return warning({
    code: "bench.glitches",
    where: `line ${first.line}, column ${first.header}`,
    found: what,
    needed: "",
    mend: "A few are normal for radio links and cheap scale amplifiers; many point to a loose contact",
  });
}

/** Too many to be glitches: nothing was left out, and the mean is not to be trusted. */
function wildReadings({ used }: RunFacts): Warning | null {
  const hit = used.filter(({ measured }) => measured.glitches.kept !== null);
  const worst = hit.map(({ measured }) => measured.glitches.kept!).sort((a, b) => b.part - a.part)[0];
  if (!worst) return null;
  return warning({
    code: "bench.wild-readings",
    where: `column ${worst.header}`,
    found: `in ${hit.length} ${hit.length === 1 ? "plateau" : "plateaus"} up to ${formatPercent(worst.part)} of the readings lie far outside the others; they are too many to be glitches, and none was left out`,
    needed: "readings that scatter about one value while a step is held",
    mend: "Look at the trace: a loose contact or a radio link that drops out spoils the mean, a propeller that stutters has none; leave such plateaus out",
  });
}

function deadBand({ rest, table }: RunFacts): Warning | null {
  const rows = rest.deadBand.reduce((sum, { from, to }) => sum + to - from, 0);
  const first = rest.deadBand.find(({ from, to }) => to - from >= 5);
  if (!first) return null;
  return warning({
    code: "bench.dead-band",
    where: `lines ${table.lineNumbers[first.from]} to ${table.lineNumbers[first.to - 1]}`,
    found: `in ${rows} rows the command asks for thrust and the propeller stands: the dead band of the controller`,
    needed: "",
    mend: "Such rows are neither tare nor plateau",
  });
}

/** A passage from step to step is worth a word where it takes longer than so many usual plateaus. */
const LONG_PASSAGE = 1;

function ramps({ spans, table }: RunFacts): Warning | null {
  const lengths = Float64Array.from(spans.spans, ({ from, to }) => to - from);
  const usual = lengths.length > 0 ? median(lengths) : 0;
  const ramped = spans.rejected.filter(
    ({ because, span: { from, to } }) => because === "ramp" && to - from > LONG_PASSAGE * usual,
  );
  const first = ramped[0];
  if (!first) return null;
  const rows = ramped.reduce((sum, { span }) => sum + span.to - span.from, 0);
  return warning({
    code: "bench.ramp",
    where: `lines ${table.lineNumbers[first.span.from]} to ${table.lineNumbers[first.span.to - 1]}`,
    found: `${rows} rows of slow ramp were not taken as plateaus`,
    needed: "steps that are held: on a ramp scale and water lag behind the rotation rate",
    mend: "Hold each throttle step for a few seconds",
  });
}

function unsettled({ spans, table }: RunFacts): Warning | null {
  const moving = spans.rejected.filter(({ because }) => because === "still settling");
  const first = moving[0];
  if (!first) return null;
  return warning({
    code: "bench.unsettled",
    where: `lines ${table.lineNumbers[first.span.from]} to ${table.lineNumbers[first.span.to - 1]}`,
    found: `${moving.length} held ${moving.length === 1 ? "step was" : "steps were"} not taken as ${moving.length === 1 ? "a plateau" : "plateaus"}, because thrust or rotation rate still moved when half of the step was over, or the thrust crept on`,
    needed: "readings that settle in the first half of a step",
    mend: "Hold the step for longer, or mark the steady part by hand",
  });
}

function settledTooLate({ spans, table }: RunFacts): Warning | null {
  const late = spans.rejected.filter(({ because }) => because === "settled too late");
  const first = late[0];
  if (!first) return null;
  const steps = late.length === 1 ? "held step was" : "held steps were";
  return warning({
    code: "bench.settled-too-late",
    where: `lines ${table.lineNumbers[first.span.from]} to ${table.lineNumbers[first.span.to - 1]}`,
    found: `${late.length} ${steps} not taken as ${late.length === 1 ? "a plateau" : "plateaus"}, because less than the shortest plateau was left once thrust and rotation rate had settled`,
    needed: "about a second of steady readings in each step",
    mend: "Hold the step for longer, set a shorter minimum duration, or mark the steady part by hand",
  });
}

function leftOut({ plateaus, reverse }: RunFacts): Warning | null {
  const out = plateaus.filter(({ used, number }) => !used && !reverse?.plateaus.includes(number));
  if (out.length === 0) return null;
  const list = out.map(({ number, leftOutBecause }) => `${number} (${leftOutBecause})`).join(", ");
  return warning({
    code: "bench.left-out",
    where: "plateaus",
    found: `${out.length} of ${plateaus.length} plateaus are shown but not fitted: ${list}`,
    needed: "",
    mend: "",
  });
}

function unusableSpans({ spans, table }: RunFacts): Warning | null {
  const given = spans.foundBy === "recipe" || spans.foundBy === "rows";
  const lost = spans.rejected.filter(({ because }) => because === "without readings" || spans.foundBy === "recipe");
  const first = lost[0];
  if (!given || !first) return null;
  return warning({
    code: "bench.unusable-span",
    where: `lines ${table.lineNumbers[first.span.from]} to ${table.lineNumbers[first.span.to - 1]}`,
    found: `${lost.length} of the plateaus that were asked for can not be used (${first.because})`,
    needed: "thrust and rotation rate in the same rows, with the propeller turning",
    mend: "",
  });
}

function borrowedTare({ used, thrustTare, timeline, table }: RunFacts): Warning | null {
  if (thrustTare.windows.length === 0) return null;
  const withTare = new Set(thrustTare.windows.map(({ segment }) => segment));
  const without = used.find(({ measured }) => !withTare.has(segmentOf(timeline, measured.span.from)));
  if (!without) return null;
  return warning({
    code: "bench.tare-borrowed",
    where: `line ${table.lineNumbers[without.measured.span.from]}`,
    found: "a part of the log after a restart has no rest of its own, so the zero of another part was used",
    needed: "a rest at zero throttle in each part: many scales set themselves to zero when they start",
    mend: "Leave these plateaus out if the scale started again as well",
  });
}

function oneTare({ thrustTare }: RunFacts): Warning | null {
  if (thrustTare.windows.length !== 1) return null;
  return warning({
    code: "bench.one-tare",
    where: "tare",
    found:
      "the log holds one rest only, so a drift of the zero can not be seen and the uncertainty does not contain it",
    needed: "a rest before and a rest after the run",
    mend: "Log a few seconds at rest at both ends",
  });
}

function singleReadings({ singleReadings: single, used }: RunFacts): Warning | null {
  if (!single) return null;
  return warning({
    code: "bench.single-readings",
    where: "plateaus",
    found: `each of the ${used.length} plateaus is one reading without spread: its uncertainty is the step of the instruments alone, and that of the coefficient comes from how the readings scatter about the fit`,
    needed: "",
    mend: "Repeat readings, in another order, make the interval narrower and more honest",
  });
}

function motorConstants({ powerSource, standMotor }: RunFacts): Warning | null {
  // Constants with their uncertainty are in the interval: nothing is left to warn of.
  if (powerSource !== "motorConstants" || standMotor?.motor.uncertainties) return null;
  return warning({
    code: "bench.motor-constants",
    where: "shaft power",
    found:
      "no torque was measured: shaft power was worked out from electrical power and the motor's constants, and the interval does not contain the error of these constants",
    needed: "a torque cell, or constants measured on this very motor",
    mend: "Identify the motor: measure its speed constant, resistance and no-load current on the stand",
  });
}

function lowReynolds({ propeller, fluid, used }: RunFacts): Warning | null {
  if (propeller.chordAt07 === undefined) return null;
  const numbers = used.map(({ measured }) =>
    bladeReynolds({
      chord: propeller.chordAt07!,
      diameter: propeller.diameter,
      rotationRate: measured.rotationRate.mean,
      advanceSpeed: 0,
      kinematicViscosity: fluid.kinematicViscosity,
    }),
  );
  const lowest = Math.min(...numbers);
  if (lowest >= LOW_REYNOLDS) return null;
  const thousands = (value: number) => `${formatNumber(value / 1000, 2)} thousand`;
  return warning({
    code: "bench.low-reynolds",
    where: "rotation rate",
    found: `the blade Reynolds number goes from ${thousands(lowest)} to ${thousands(Math.max(...numbers))}`,
    needed: "",
    mend: "Below 200 thousand the coefficients may change with speed and finish: compare propellers at equal rotation rate",
  });
}
