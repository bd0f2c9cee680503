import type { SolvedTether, TetherSolution, UncertainTetherForce } from "../../model/vehicle/tetherShape.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import { solveTether } from "../tether/solveTether.ts";
import { tetherOut, tetherRequest } from "./tetherPull.ts";

/** Part of the speed by which it is moved for its slope. */
const STEP = 1e-3;
const WITH_SPEED = "The doubt of the speed is in it, as if it did not hang on that of the tether.";

/**
 * Shape and pull of the tether at a speed ahead (m/s) with its standard uncertainty; null where none is out.
 *
 *   u²(T) = u²(T at V) + (∂T/∂V)² u²(V)
 *
 * Source   JCGM 100:2008, eq. 10; the slope from a second solve beside the first.
 * Assumes  the doubt of the speed independent of that of the tether, which is on the safe side: a tether that drags more
 *          makes it slower.
 */
export function tetherAtSpeed(
  vehicle: Vehicle,
  numbers: VehicleNumbers,
  speed: { readonly value: number; readonly standardUncertainty: number },
): TetherSolution | null {
  const out = tetherOut(vehicle, numbers);
  if (out === null) return null;
  const at = (V: number) => solveTether(tetherRequest(out, [V, 0, 0], vehicle.scenario.currentFrom));
  const solved = at(speed.value);
  if (solved.state !== "solved" || !(speed.value > 0) || speed.standardUncertainty === 0) return solved;
  const faster = at((1 + STEP) * speed.value);
  return faster.state === "solved"
    ? withSpeedDoubt(solved, faster, speed.standardUncertainty / (STEP * speed.value))
    : solved;
}

/** `times` the step is the standard uncertainty of the speed. */
function withSpeedDoubt(solved: SolvedTether, faster: SolvedTether, times: number): SolvedTether {
  const wider = (one: Uncertain, next: Uncertain) =>
    uncertain(one.value, Math.hypot(one.standardUncertainty, (next.value - one.value) * times));
  const force = (one: UncertainTetherForce, next: UncertainTetherForce): UncertainTetherForce => ({
    forward: wider(one.forward, next.forward),
    starboard: wider(one.starboard, next.starboard),
    down: wider(one.down, next.down),
  });
  const { belly, greatestTension, assumption } = solved;
  return {
    ...solved,
    assumption: `${assumption} ${WITH_SPEED}`,
    forceOnVehicle: force(solved.forceOnVehicle, faster.forceOnVehicle),
    forceOnUpperEnd: force(solved.forceOnUpperEnd, faster.forceOnUpperEnd),
    belly: { ...belly, distance: wider(belly.distance, faster.belly.distance) },
    greatestTension: { ...greatestTension, tension: wider(greatestTension.tension, faster.greatestTension.tension) },
  };
}
