import type { BestSpeed, EndurancePoint, SpeedAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import { goldenMaximum } from "../../numeric/goldenSection.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { hasInterval } from "../../quantity/told.ts";
import { doubtShares, toldOf } from "../propulsion/firstOrder.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { discharge, energyBetween } from "./discharge.ts";
import { type Changing, linearOfDrawing } from "./enduranceDoubts.ts";
import { isHotelStated } from "./hotelLoad.ts";
import type { Drawing } from "./plan.ts";
import { timeCurve } from "./timeCurve.ts";
import { swimWish } from "./wishes.ts";
import { uncertainTimeWords, uncertainWayWords, wayWords } from "./words.ts";

/** Speeds of the curve besides rest. */
const POINTS = 16;
/** Width of the last bracket of the best speed, of the greatest speed. */
const PLACE = 1e-6;
/** Part of the greatest way that a speed "as good" may lack. */
const AS_GOOD = 0.02;

export interface SolvedSpeeds {
  readonly answer: SpeedAnswer;
  readonly converged: boolean;
}

/**
 * Time and way on the usable charge over the speed ahead, up to the steady speed at the start (m/s), and the speed of the
 * greatest way through the water, or out and back along a current.
 *
 *   s(V) = V t(V),   out and back  r(V) = t(V) (V² − U²)/(2 V)
 *
 * Assumes  straight ahead at one speed, trim held; the power is that through the water both out and back.
 */
export function speedAnswer(on: Drawing, changing: Changing, greatestSpeed: number): SolvedSpeeds {
  const speeds = Array.from({ length: POINTS + 1 }, (_, i) => (greatestSpeed * i) / POINTS);
  const points = speeds.map((speed) => pointAt(on, speed)).filter((point) => point !== null);
  const range = bestOf(on, changing, points, "range");
  const reach = on.model.numbers.currentSpeed > 0 ? bestOf(on, changing, points, "reach") : null;
  return {
    answer: {
      ...{ points, bestRange: range?.best ?? null, bestReach: reach?.best ?? null },
      sentence: sentenceOf(range?.best ?? null, reach?.best ?? null, on.model.numbers),
    },
    converged: (range?.converged ?? true) && (reach?.converged ?? true),
  };
}

function pointAt(on: Drawing, speed: number): EndurancePoint | null {
  const draw = on.draw(on.needs(swimWish(on.vehicle, on.model.numbers, speed)));
  if (!draw.can) return null;
  const { battery } = on;
  const endless = { from: battery.start, until: draw.drain.least, duration: Number.POSITIVE_INFINITY };
  const { time, to } = discharge(battery, draw.drain, endless);
  if (!(time > 0)) return null;
  const energy = energyBetween(battery, draw.drain, battery.start, to);
  const power = (energy.source - energy.supplyLoss) / time;
  const current = on.model.numbers.currentSpeed;
  const range = wayOf("range", { speed, time, current });
  const reach = speed > current ? wayOf("reach", { speed, time, current }) : null;
  return { speed, power, time, range, reach, endedBy: draw.drain.by };
}

type Way = "range" | "reach";

/**
 * The speed of the greatest way: on a smooth curve through the points, then by the bus itself; the edges of the flat top by
 * the curve alone. Where the greatest point is at the end, that is the best.
 */
function bestOf(on: Drawing, changing: Changing, points: readonly EndurancePoint[], way: Way) {
  const timeAt = timeCurve(points);
  const U = on.model.numbers.currentSpeed;
  const wayAt = (speed: number) => wayOf(way, { speed, time: timeAt(speed), current: U });
  const top = points.reduce((best, one, i) => ((one[way] ?? 0) > (points[best]![way] ?? 0) ? i : best), 0);
  const greatest = points[top]?.[way] ?? 0;
  if (!(greatest > 0)) return null;
  const [first, last] = [points[0]!.speed, points.at(-1)!.speed];
  const [low, high] = [points[top - 1]?.speed ?? first, points[top + 1]?.speed ?? last];
  const { at, value, converged } = goldenMaximum(wayAt, low, high, { tolerance: PLACE * last });
  const spare = (speed: number) => wayAt(speed) - (1 - AS_GOOD) * value;
  const edge = (end: number) =>
    spare(end) >= 0
      ? end
      : bracketedRoot(spare, Math.min(at, end), Math.max(at, end), { relativeTolerance: PLACE }).root;
  const lowest = way === "reach" ? Math.max(first, U) : first;
  const speed = polished(on, way, at, last) ?? points[top]!.speed;
  return { best: bestSpeed(on, changing, { speed, within: [edge(lowest), edge(last)], way, full: last }), converged };
}

/** Part of the speed by which its neighbours lie apart for the parabola. */
const APART = 0.05;

/** Top of the parabola through the ways at a speed and its neighbours, by the bus itself; null where there is none. */
function polished(on: Drawing, way: Way, speed: number, greatest: number): number | null {
  const step = Math.min(APART * speed, greatest - speed);
  const [below, at, above] = [speed - step, speed, speed + step].map((one) => pointAt(on, one)?.[way] ?? null);
  if (below == null || at == null || above == null) return null;
  const bend = below - 2 * at + above;
  return bend < 0 ? speed + (0.5 * step * (below - above)) / bend : null;
}

function wayOf(way: Way, { speed: V, time, current: U }: { speed: number; time: number; current: number }): number {
  if (way === "range") return V * time;
  return V > U ? (time * (V * V - U * U)) / (2 * V) : 0;
}

interface Found {
  readonly speed: number;
  readonly within: [number, number];
  readonly way: Way;
  /** Greatest speed, m/s. */ readonly full: number;
}

/** Part of the greatest speed below which a best speed is told as extrapolated; common practice, no source. */
const SLOW = 0.2;

const slowWords = (part: number) =>
  ` Extrapolated: that is ${formatPercent(part, 2)} of its greatest speed ahead, where propellers turn far slower than on a stand and the drag coefficient is mostly higher; both are taken as they are given.`;

/** Time and way there by first order; at the best speed the way does not change with the speed. */
function bestSpeed(on: Drawing, changing: Changing, { speed, within, way, full }: Found): BestSpeed {
  const { time: t, [way]: s } = pointAt(on, speed)!;
  const [times, ways] = linearOfDrawing(changing, [t, s!], (changed) => {
    const point = pointAt(changed, speed);
    return point === null || point[way] === null ? null : [point.time, point[way]];
  });
  const { doubts, why } = changing;
  const [time, range] = [toldOf(doubts, times!, why), toldOf(doubts, ways!, why)];
  const { numbers } = on.model;
  const free = isHotelStated(numbers, doubts) ? "" : ", with no hotel load, as none is stated";
  const slow = speed < SLOW * full ? slowWords(speed / full) : "";
  const flat = `Between ${formatNumber(within[0])} and ${formatNumber(within[1])} m/s it is at most ${100 * AS_GOOD} % less.`;
  const goal = way === "range" ? "It goes farthest" : "It gets farthest out against the current and back";
  // Why there is no interval is said once.
  const told = hasInterval(time) ? uncertainWayWords(range) : wayWords(range.value);
  const sentence = `${goal} at ${formatNumber(speed)} m/s: ${told} in ${uncertainTimeWords(time)}${free}. ${flat}${slow}`;
  return { speed, time, range, within, shares: why === null ? doubtShares(doubts, ways!) : [], sentence };
}

function sentenceOf(range: BestSpeed | null, reach: BestSpeed | null, { currentSpeed }: VehicleNumbers): string {
  if (range === null) return "It makes no way ahead on this charge.";
  if (currentSpeed === 0) return range.sentence;
  if (reach === null)
    return `${range.sentence} Against the current of ${formatNumber(currentSpeed)} m/s it makes no way.`;
  return `${range.sentence} ${reach.sentence}`;
}
