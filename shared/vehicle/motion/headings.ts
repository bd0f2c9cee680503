import type { HeadingPoint, HeadingPolar } from "../../model/vehicle/motionAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { formatNumber } from "../../quantity/format.ts";
import { formatTold, withoutInterval } from "../../quantity/told.ts";
import { scaled } from "../layout/wrenchMatrix.ts";
import { type BusSolution, busDemand } from "../propulsion/busDemand.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import { type Linear, linearFrom, linearOf, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import { type PropulsionModel, withNumbers } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { METRE_PER_SECOND } from "../tether/shownUnits.ts";
import { terminalSpeed } from "./closedForms.ts";
import type { SolvedWay } from "./steadyMotion.ts";
import { steadySpeed } from "./steadySpeed.ts";
import type { TetherBook } from "./tetherBook.ts";
import type { TetherPull } from "./tetherPull.ts";
import { dragAlong, netWeight } from "./wayForces.ts";

/** Headings that are told, rad apart. */
const STEP = Math.PI / 12;
/** Headings at which a tether that feels the current is solved. */
const TETHER_STEP = Math.PI / 6;
/** Width of the last bracket of a current, relative. */
const TOLERANCE = 1e-9;
/** Rounds that find the angle of the bow where the speed hangs on it. */
const ROUNDS = 6;

export interface HeadingQuestion {
  readonly model: PropulsionModel;
  readonly doubts: VehicleDoubts;
  readonly ahead: SolvedWay;
  readonly vehicle: Vehicle;
  readonly tether: TetherBook;
  /** Why no interval can be stated; null: it can. */ readonly why: string | null;
}

/** From where the current comes over the way the vehicle goes, m/s and rad. */
export interface CurrentTriangle {
  /** Speed through the water, m/s. */ readonly speed: number;
  readonly current: number;
  readonly from: number;
}

/**
 * Speed over the ground of a vehicle that turns its bow so far into a current that it keeps its way, m/s; null where it is
 * carried off.
 *
 *   V_g = √(V² − U² sin²ψ) − U cos ψ,   sin β = U sin ψ/V
 *
 * Source   triangle of velocities, any text on navigation.
 *
 * @example madeGood({ speed: 1.5, current: 0.9, from: Math.PI / 2 }).speedOverGround // 1.2 m/s
 */
export function madeGood({
  speed,
  current,
  from,
}: CurrentTriangle): { speedOverGround: number; bowOffset: number } | null {
  const across = current * Math.sin(from);
  if (!(speed > 0) || Math.abs(across) > speed) return null;
  return {
    speedOverGround: Math.sqrt(speed * speed - across * across) - current * Math.cos(from),
    bowOffset: Math.asin(across / speed) + 0,
  };
}

/** Greatest speed over the ground on every heading to the current, and the current that is held from every side. */
export function headingPolar(question: HeadingQuestion): HeadingPolar | null {
  const { model, doubts, ahead, tether, why } = question;
  const V = ahead.speed;
  if (V === null) return null;
  const U = model.numbers.currentSpeed;
  const speedFrom = speedByCurrent(question);
  const hold = { model, pullsAtOne: tether.atOne };
  const points = Array.from({ length: 24 }, (_, i): HeadingPoint => {
    const from = i * STEP;
    const made = goodAt(speedFrom, U, from);
    const held = heldCurrent(hold, from);
    return {
      currentFrom: from,
      ...{ speedOverGround: made?.speedOverGround ?? null, bowOffset: made?.bowOffset ?? null },
      speedThroughWater: made?.speed ?? null,
      ...{ greatestCurrentHeld: held, holdsStation: held === null ? null : held >= U },
    };
  });
  const worst = worstHeld(points);
  const least = worst && toldOf(doubts, linearHeld(doubts, hold, worst.from, worst.current), why);
  const against = linearFrom(doubts, model.numbers, [V], ([speed], numbers) => speed! - numbers.currentSpeed);
  const overGround = speedFrom(0) - U;
  const againstCurrent =
    why === null ? uncertainOf(doubts, { ...against, value: overGround }) : withoutInterval(overGround, why);
  return {
    ...{ current: U, points, leastCurrentHeld: least, worstFrom: worst?.from ?? null, againstCurrent },
    sentence: sentenceOf(U, againstCurrent, least, points),
  };
}

function sentenceOf(
  U: number,
  against: HeadingPolar["againstCurrent"],
  least: HeadingPolar["leastCurrentHeld"],
  points: readonly HeadingPoint[],
): string {
  const first =
    U === 0
      ? "No current is stated."
      : `Against a current of ${formatNumber(U)} m/s it makes ${formatTold(against!, METRE_PER_SECOND)} over the ground.`;
  const carried = points.filter(({ speedOverGround }) => speedOverGround === null || speedOverGround <= 0).length;
  const second = carried === 0 ? "" : ` On ${carried} of ${points.length} headings it can not keep its way.`;
  const third =
    least === null
      ? " From the side it holds its place only with the bow turned into the current."
      : ` With the bow kept it holds its place in ${formatTold(least, METRE_PER_SECOND)} from any side.`;
  return first + second + third;
}

function worstHeld(points: readonly HeadingPoint[]): { from: number; current: number } | null {
  let worst: { from: number; current: number } | null = null;
  for (const { currentFrom: from, greatestCurrentHeld: current } of points) {
    if (current === null) return null;
    if (worst === null || current < worst.current * (1 - TOLERANCE)) worst = { from, current };
  }
  return worst;
}

/** The bow offset changes where the current comes from, and with it the pull of a tether that feels the current. */
function goodAt(speedFrom: (offBow: number) => number, current: number, from: number) {
  let offset = 0;
  for (let round = 0; ; round++) {
    const speed = speedFrom(from - offset);
    const made = madeGood({ speed, current, from });
    if (made === null) return null;
    if (round === ROUNDS || Math.abs(made.bowOffset - offset) < 1e-6) return { ...made, speed };
    offset = made.bowOffset;
  }
}

/** Speed through the water with the current from an angle off the bow; one number where it makes no difference. */
function speedByCurrent({ model, ahead, vehicle, tether }: HeadingQuestion): (offBow: number) => number {
  const speed = model.numbers.currentSpeed;
  if (speed === 0 || !feelsCurrent(vehicle)) return () => ahead.steady.speed;
  let near = ahead.steady.speed;
  const known = Array.from({ length: 7 }, (_, i) => {
    const pull = tether.in({ speed, from: i * TETHER_STEP })(model.numbers);
    near = steadySpeed({ ...ahead.problem, pull }, near).speed;
    return near;
  });
  // Port and starboard are alike but for the layout, whose forces across are small beside those along.
  return (offBow) => {
    const at = Math.abs(Math.atan2(Math.sin(offBow), Math.cos(offBow))) / TETHER_STEP;
    const i = Math.min(5, Math.floor(at));
    return known[i]! + (at - i) * (known[i + 1]! - known[i]!);
  };
}

/** In a uniform current a tether whose both ends move with the vehicle does not feel it. */
const feelsCurrent = ({ tether, scenario: { tetherLength, currentProfile } }: Vehicle): boolean =>
  tether !== undefined && tetherLength > 0 && (currentProfile !== "uniform" || tether.motion === "upperEndFixed");

/** What holding a place in a current needs. */
export interface HoldProblem {
  readonly model: PropulsionModel;
  /** Force of the tether on the vehicle at 1 m/s of current from an angle, N; it grows with the square. */
  readonly pullsAtOne: (numbers: VehicleNumbers) => (from: number) => TetherPull;
}

/**
 * How many times over the vehicle makes the force that holds it in a current (m/s) from an angle off its bow (rad), bow
 * kept; null where it has no drag stated or no thruster for that side.
 *
 *   D_x = drag(U cos ψ),  D_y = drag(U sin ψ)
 *
 * Assumes  no coupling of the drags of the two axes; the tether's force goes with the square of the current.
 */
export const holdReserve = (...asked: Parameters<typeof holdSolved>): number | null =>
  holdSolved(...asked)?.times ?? null;

/** The bus at the greatest force that holds it, as `holdReserve`. */
export function holdSolved({ model, pullsAtOne }: HoldProblem, from: number, U: number): BusSolution | null {
  const [c, s] = [clean(Math.cos(from)), clean(Math.sin(from))];
  const { drag, density } = model.numbers;
  const [alongDrag, acrossDrag] = [drag[c < 0 ? "astern" : "ahead"], drag[s < 0 ? "port" : "starboard"]];
  const { held } = model.geometry;
  if (c !== 0 && (alongDrag === null || !held.includes("surge"))) return null;
  if (s !== 0 && (acrossDrag === null || !held.includes("sway"))) return null;
  const [px, py, pz] = scaled(pullsAtOne(model.numbers)(from).force, U * U);
  const X = (c === 0 ? 0 : Math.sign(c) * dragAlong(alongDrag!, density, U * Math.abs(c))) - px;
  const Y = (s === 0 ? 0 : Math.sign(s) * dragAlong(acrossDrag!, density, U * Math.abs(s))) - py;
  const direction = { ...(held.includes("surge") && { surge: X }), ...(held.includes("sway") && { sway: Y }) };
  const aside = { heave: -(pz + netWeight(model)) };
  return busDemand(model, { direction, aside, velocity: [U * c, U * s, 0] });
}

const clean = (part: number) => (Math.abs(part) < 1e-12 ? 0 : part);

/** Greatest current from an angle off the bow in which it holds its place, m/s; null as `holdReserve`. */
export function heldCurrent(hold: HoldProblem, from: number): number | null {
  const first = holdReserve(hold, from, 1);
  if (first === null) return null;
  const excess = (U: number) => holdReserve(hold, from, U)! - 1;
  let [low, high] = [0, terminalSpeed({ force: Math.max(first, 1e-6), quadratic: 1 })];
  for (let step = 0; step < 40 && excess(high) > 0; step++) [low, high] = [high, 1.5 * high];
  if (low === 0) {
    low = high;
    for (let step = 0; step < 40 && excess(low) <= 0; step++) low *= 0.5;
    if (excess(low) <= 0) return 0;
  }
  return bracketedRoot(excess, low, high, { relativeTolerance: TOLERANCE }).root;
}

/** The current held from one side by first order, m/s; the doubt of the current itself is none here, as it is sought. */
export function linearHeld(doubts: VehicleDoubts, hold: HoldProblem, from: number, current: number): Linear {
  if (!(current > 0)) return { value: current, by: doubts.list.map(() => 0) };
  const reserve = (model: PropulsionModel, U: number) => holdReserve({ ...hold, model }, from, U) ?? 1;
  const { by } = linearOf(doubts, hold.model.numbers, 1, (numbers, { of }) =>
    of === "mass" || of === "current" ? null : reserve(withNumbers(hold.model, numbers), current),
  );
  const h = 1e-4 * current;
  const slope = (reserve(hold.model, current + h) - reserve(hold.model, current - h)) / (2 * h);
  return { value: current, by: by.map((one) => -one / slope) };
}
