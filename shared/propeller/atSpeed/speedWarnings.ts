import type { SpeedPoint, ThrustAtSpeedRequest } from "../../model/thrustAtSpeed.ts";
import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { seriesWarnings } from "../series/seriesRange.ts";
import type { AdvanceCandidate } from "./advanceCandidate.ts";

/** What a reader must know of thrust at speed: of the curve it rests on, and of the momentum limit. */
export function speedWarnings(
  chosen: AdvanceCandidate,
  points: readonly SpeedPoint[],
  request: ThrustAtSpeedRequest,
): Warning[] {
  return [...ofCurve(chosen, request), ...aboveLimit(points), ...bandAboveLimit(points, request)];
}

function ofCurve({ source }: AdvanceCandidate, request: ThrustAtSpeedRequest): Warning[] {
  const { series, outsideRange, openWater, speeds } = request;
  const ofSeries = series === undefined ? [] : seriesWarnings({ series, outsideRange });
  if (source === "momentum" && Math.max(...speeds) > 0) return [...ofSeries, pitchUnknown()];
  if (source !== "openWater" || openWater === undefined) return ofSeries;
  const [low, high] = openWater.range;
  return low > 0.05 ? [...ofSeries, notFromRest(low, high)] : ofSeries;
}

/** A curve carried over from another propeller can promise more at speed than any propeller can do. */
function aboveLimit(points: readonly SpeedPoint[]): Warning[] {
  const first = points.find((point) => point.state === "solved" && point.thrust.value > point.idealThrust);
  if (first === undefined) return [];
  return [
    warning({
      code: "propeller.above-limit-at-speed",
      where: "speeds",
      found: `From ${formatNumber(first.advanceSpeed)} m/s on the curve gives more thrust than momentum theory allows for its power`,
      needed: "a curve below the momentum limit",
      mend: "Take the limit there; another pitch ratio, or a run at speed, would fit this propeller better",
    }),
  ];
}

/** At fixed power no propeller reaches the part of the band above the momentum limit. */
function bandAboveLimit(points: readonly SpeedPoint[], { fixed }: ThrustAtSpeedRequest): Warning[] {
  if (fixed.given !== "shaftPower") return [];
  const first = points.find(
    (point) =>
      point.state === "solved" &&
      point.thrust.value <= point.idealThrust &&
      point.thrust.interval95[1] > point.idealThrust,
  );
  if (first === undefined) return [];
  return [
    warning({
      code: "propeller.band-above-limit",
      where: "speeds",
      found: `From ${formatNumber(first.advanceSpeed)} m/s on the upper end of the interval lies above what momentum theory allows for this power`,
      needed: "an interval that ends at the limit",
      mend: "Read the limit as the upper end there; a run at speed, or a better known point at rest, makes the interval narrower",
    }),
  ];
}

function pitchUnknown(): Warning {
  return warning({
    code: "propeller.pitch-unknown",
    where: "series",
    found: "Momentum theory alone does not know at which speed the blades stop pushing",
    needed: "a series propeller of the same kind, the blades, or a run at speed",
    mend: "State one; until then take the thrust at speed as an upper guess",
  });
}

function notFromRest(low: number, high: number): Warning {
  return warning({
    code: "propeller.curve-not-from-rest",
    where: "openWater.range",
    found: `The run at speed covers advance ratios from ${formatNumber(low)} to ${formatNumber(high)}; outside the curve is carried on`,
    needed: "a run that begins at rest",
    mend: "Take the numbers outside as a rough guide; their band is wider",
  });
}
