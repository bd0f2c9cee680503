import { formatPercent, formatUncertain } from "../../quantity/format.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { RunFacts } from "../runFacts.ts";
import type { SweepFit } from "../sweepFit.ts";

/** Part of the coefficient by which up and down may differ before the lag is allowed for. */
const MUCH = 0.02;
/** Smaller differences are not worth a word. */
const RELEVANT = 0.005;

/** What a reader of a coefficient from a slow ramp should know. */
export function rampSweepChecks({ sweep }: RunFacts): Warning[] {
  if (sweep === null) return [];
  return [tooFast(sweep), early(sweep), oneWay(sweep), noLag(sweep), freeZero(sweep)].filter((found) => found !== null);
}

const percent = (part: number) => formatPercent(Math.abs(part));
const seconds = (lag: Uncertain) => formatUncertain(lag, { symbol: "s", factor: 1 });

function tooFast({ lagEffect, lag }: SweepFit): Warning | null {
  if (lagEffect === null || Math.abs(lagEffect) < MUCH || isEarly(lag)) return null;
  return warning({
    code: "bench.sweep-too-fast",
    where: "sweep",
    found: `before a lag is allowed for, the way up gives ${percent(lagEffect)} ${lagEffect < 0 ? "less" : "more"} thrust coefficient than the way down: the ramp was fast for this stand, or its pivot sticks. It was put down to a lag of ${seconds(lag)}, and the result hangs on that`,
    needed: `less than ${percent(MUCH)}`,
    mend: "Ramp at half the pace: what a lag does is halved, what friction does stays; or hold steps",
  });
}

const isEarly = ({ interval95: [, high] }: Uncertain) => high < 0;

function early({ lag, lagEffect }: SweepFit): Warning | null {
  if (!isEarly(lag) || lagEffect === null || Math.abs(lagEffect) < RELEVANT) return null;
  return warning({
    code: "bench.sweep-early-thrust",
    where: "sweep",
    found: `thrust comes before the rotation rate (lag ${seconds(lag)}), so that up and down differ by ${percent(lagEffect)} without it: a tachometer that averages, or a scale that fades on the way down; one ramp can not tell which, and half of the difference is part of the uncertainty`,
    needed: "",
    mend: "Ramp at half the pace: what a slow tachometer does is halved, what the scale does stays",
  });
}

function oneWay({ up, down }: SweepFit): Warning | null {
  if (up && down) return null;
  return warning({
    code: "bench.sweep-one-way",
    where: "sweep",
    found: `the ramp goes ${up ? "up" : "down"} only, so the lag is told by the shape of the ramp alone and friction of the stand can not be seen`,
    needed: "a ramp up and down at the same pace",
    mend: "Log the way back too",
  });
}

function noLag({ converged }: SweepFit): Warning | null {
  if (converged) return null;
  return warning({
    code: "bench.sweep-no-lag",
    where: "sweep",
    found:
      "the search for the lag between rotation rate and thrust did not settle; the coefficient was taken without one",
    needed: "",
    mend: "Compare up and down before you trust it, or ramp more slowly",
  });
}

function freeZero({ freeZero: free }: SweepFit): Warning | null {
  if (!free) return null;
  return warning({
    code: "bench.sweep-free-zero",
    where: "sweep",
    found:
      "the log holds no rest, so one zero for the whole ramp was fitted together with the coefficient; a drift of it can not be seen",
    needed: "a few seconds at rest before and after the ramp",
    mend: "",
  });
}
