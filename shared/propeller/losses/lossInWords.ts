import type { LossCause, LossReport } from "../../model/lossReport.ts";
import { formatUncertain } from "../../quantity/format.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";

type Numbers = Omit<LossReport, "short" | "long" | "warnings">;

const PERCENT = { symbol: "%", factor: 0.01 };

const CAUSES: Readonly<Record<LossCause, { readonly what: string; readonly acts: string }>> = {
  profile: {
    what: "drag of the blade sections",
    acts: "a smoother surface, thinner edges and less blade area act on it",
  },
  swirl: {
    what: "rotation left in the stream",
    acts: "less pitch at a higher rotation rate, or fixed vanes behind, act on it",
  },
  tip: {
    what: "flow round the blade tips",
    acts: "more blades, or a nozzle with a small gap, act on it",
  },
  hub: { what: "flow round the roots of the blades", acts: "a smaller hub and a clean root act on it" },
  induced: {
    what: "load spread unevenly over the disc",
    acts: "pitch and chord that carry the load more evenly from root to tip act on it",
  },
};

/** How far from ideal and from a good propeller, in two sentences. */
export function shortReport(name: string, { staticMerit, thrustOverIdeal, series }: Numbers): string {
  const ideal = `${name} has a static merit of ${formatUncertain(staticMerit)}: from its shaft power it makes ${formatUncertain(thrustOverIdeal)} of the thrust that momentum theory allows an open disc of its size.`;
  if (staticMerit.value >= 1) return `${ideal} No open propeller can do that: check tare, calibration and diameter.`;
  return series === null ? ideal : `${ideal} ${againstSeries(series)}`;
}

function againstSeries({ name, thrustAtEqualPower }: NonNullable<Numbers["series"]>): string {
  const ratio = formatUncertain(thrustAtEqualPower);
  const [low, high] = thrustAtEqualPower.interval95;
  const times = `${ratio} times the thrust of ${name}`;
  if (high < 1) return `At equal shaft power it makes ${times}, so a good propeller of this pitch has more to give.`;
  if (low > 1)
    return `At equal shaft power it makes ${times}: better than the series, so check calibration and pitch before believing it.`;
  return `At equal shaft power it makes ${times}: no difference can be claimed.`;
}

/** The same with every loss, and what acts on the greatest. */
export function longReport(name: string, numbers: Numbers): string {
  const { series, shares, sharesFrom, staticMerit } = numbers;
  const parts = [shortReport(name, numbers)];
  if (series !== null && staticMerit.value < 1) {
    parts.push(
      `At equal rotation rate it makes ${formatUncertain(series.thrustRatio)} times that propeller's thrust for ${formatUncertain(series.powerRatio)} times its power.`,
    );
  }
  const greatest = shares[0];
  if (greatest === undefined) return parts.join(" ");
  const listed = shares.map(({ cause, share }) => `${CAUSES[cause].what} ${percent(share)}`);
  parts.push(
    `Of the shaft power an ideal disc would need ${percent(staticMerit)}; the rest goes, by blade elements ${sharesFrom === "fitted" ? "that make the measured thrust and torque" : "scaled to the measured merit"}, into ${listed.join(", ")}.`,
    `The greatest loss is ${CAUSES[greatest.cause].what}${orWithinDoubt(shares)}: ${CAUSES[greatest.cause].acts}, each at a price elsewhere, so measure again.`,
  );
  return parts.join(" ");
}

/** Other losses that may be the greatest as well, for all their intervals tell. */
function orWithinDoubt([greatest, ...others]: Numbers["shares"]): string {
  const rivals = others.filter(({ share }) => share.interval95[1] > greatest!.share.value);
  return rivals.length === 0
    ? ""
    : ` or, within the doubt, ${rivals.map(({ cause }) => CAUSES[cause].what).join(" or ")}`;
}

const percent = (share: Uncertain) => formatUncertain(share, PERCENT);
