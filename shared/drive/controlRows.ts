import type { ControlEnd, ControlRow } from "../model/controlTable.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { DriveDirection } from "../model/driveTrainPoint.ts";
import { type Chain, chainOf } from "./chain.ts";
import type { CommandScale } from "./controlCommand.ts";
import { describePoint, operatingPoint } from "./operatingPoint.ts";
import { emptyState, solveSteadyState } from "./steadyState.ts";

/** One direction of a table at one voltage. */
export interface DirectionRows {
  /** From stop outwards, without the row of stop itself. */
  readonly rows: readonly ControlRow[];
  readonly end: ControlEnd;
}

interface Asked {
  readonly request: DriveRequest;
  readonly direction: DriveDirection;
  readonly scale: CommandScale;
  readonly steps: number;
}

/**
 * Rows of one direction: the end of the dead band, the last throttle at which the motor stands, then equal steps of
 * throttle to full throttle or to the limit that is reached first.
 *
 * Up to there thrust rises with the throttle: "supply voltage", where it would turn, is one of the limits.
 */
export function directionRows({ request, direction, scale, steps }: Asked): DirectionRows {
  // The point at closed throttle refuses what is not physical, and knows where each limit lies.
  const { limits } = operatingPoint({ ...request, throttle: 0, uncertainties: {} });
  const chain = chainOf(request);
  const row = (throttle: number) => rowAt(request, chain, { throttle, direction }, scale);
  const reached = limits.filter(({ reachedAtThrottle }) => reachedAtThrottle !== null);
  const first = reached.toSorted((a, b) => a.reachedAtThrottle! - b.reachedAtThrottle!)[0];
  const end = Math.min(1, first?.reachedAtThrottle ?? 1);
  const standing = lastStanding(chain, end);
  const moving = end - standing < LEAST_SPAN ? 0 : steps;
  const rows = [
    row(0),
    ...(standing > 0 ? [row(standing)] : []),
    ...Array.from({ length: moving }, (_, i) => row(standing + ((end - standing) * (i + 1)) / steps)),
  ];
  const { command, throttle, thrust } = rows.at(-1)!;
  return {
    rows,
    end: { ...{ command, thrust, throttle: Math.abs(throttle) }, endedBy: first?.name ?? "full throttle" },
  };
}

/** The row of the stop pulse. */
export function stopRow(request: DriveRequest, scale: CommandScale): ControlRow {
  const closed = rowAt(request, chainOf(request), { throttle: 0, direction: "ahead" }, scale);
  return { ...closed, command: scale.stop };
}

/** Span of throttle that no controller resolves: a limit so close to where the motor starts leaves nothing to command. */
const LEAST_SPAN = 1e-4;

/** Part of the throttle to which the start of the motor is placed. */
const START_WITHIN = 1e-12;

/** Greatest throttle up to `end` at which friction holds the motor, by bisection; 0 where it turns at once. */
function lastStanding(chain: Chain, end: number): number {
  const state = emptyState();
  const stands = (throttle: number) => solveSteadyState(chain, throttle, state).status !== "turning";
  if (stands(end)) return end;
  let [low, high] = [0, end];
  while (high - low > START_WITHIN) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  return low > FIRST_THROTTLE ? low : 0;
}

/** Throttle that no controller tells from 0. */
const FIRST_THROTTLE = 1e-8;

interface Commanded {
  readonly throttle: number;
  readonly direction: DriveDirection;
}

function rowAt(
  request: DriveRequest,
  chain: Chain,
  { throttle, direction }: Commanded,
  scale: CommandScale,
): ControlRow {
  const state = solveSteadyState(chain, throttle, emptyState());
  const point = describePoint({ ...request, throttle }, { chain, state, limits: [] });
  const sign = direction === "ahead" ? 1 : -1;
  // A zero has no sign: JSON and tables do not keep the one of -0.
  const signed = (x: number) => sign * x + 0;
  return {
    command: scale.pulse(direction, throttle),
    throttle: signed(throttle),
    zone: point.rotationRate > 0 ? direction : "standing",
    thrust: signed(point.thrust),
    thrustUncertainty: point.uncertainties?.thrust?.standardUncertainty ?? null,
    motorCurrent: point.motorCurrent,
    supplyCurrent: point.supplyCurrent,
    rotationRate: signed(point.rotationRate),
    electricalPower: point.electricalPower,
  };
}
