import { electricalPowerOf, supplyCurrentOf } from "../../shared/drive/bus.ts";
import { emptyChain, fillChain } from "../../shared/drive/chain.ts";
import { emptyLimits, fillLimits } from "../../shared/drive/limitNumbers.ts";
import { emptyState, thrustOf, windingTemperatureOf } from "../../shared/drive/shaftState.ts";
import { solveFull } from "../../shared/drive/solveFull.ts";
import { type DriveCase, driveCases } from "./driveCases.ts";

export const CASES = 2000;

const chain = emptyChain();
const limits = emptyLimits();
const state = emptyState();

/** Furthest throttle within all limits, and what is read off there: one full operating point. */
function fullPoint(one: DriveCase): number {
  fillChain(chain, one, null);
  fillLimits(limits, one, chain);
  solveFull(chain, limits, 1, state);
  const read = windingTemperatureOf(chain, state) + supplyCurrentOf(chain, state) + electricalPowerOf(chain, state);
  return Number.isFinite(read) ? thrustOf(chain, state) : Number.NaN;
}

/** Thrust of each case, N. */
export function thrusts(cases: readonly DriveCase[]): number[] {
  return cases.map(fullPoint);
}

/** Rounds over all cases within `milliseconds`, after some spent on compiling: points a second by `clock` (ms). */
export function pointsPerSecond(milliseconds: number, clock = () => performance.now()): number {
  const cases = driveCases(CASES);
  let sum = 0;
  const round = () => {
    for (const one of cases) sum += fullPoint(one);
  };
  for (let i = 0; i < 30; i++) round();
  const begin = clock();
  let rounds = 0;
  while (clock() - begin < milliseconds) {
    round();
    rounds += 1;
  }
  if (!Number.isFinite(sum)) throw new Error("a point is not finite");
  return (rounds * CASES * 1000) / (clock() - begin);
}
