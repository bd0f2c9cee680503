import type { AxisReach, LayoutAnswer } from "../../model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { finiteResult } from "../../quantity/finiteResult.ts";
import { formatUncertain } from "../../quantity/format.ts";
import type { Warning } from "../../quantity/warning.ts";
import { pseudoInverseOf } from "./allocate.ts";
import { capital } from "./axes.ts";
import { axisReach } from "./axisReach.ts";
import { forceOutlines } from "./forceOutline.ts";
import { refuseUnusable, suppliedWarnings } from "./layoutCheck.ts";
import { currentsKnown, type LayoutModel, layoutModel } from "./layoutModel.ts";
import { layoutWarnings } from "./layoutWarnings.ts";
import { motionsOf } from "./motions.ts";
import { spinBalance } from "./spinBalance.ts";
import { thrusterLosses } from "./thrusterLosses.ts";
import { wrenchMatrix } from "./wrenchMatrix.ts";

/**
 * What a layout of thrusters can do: which motions it commands, the greatest force and moment of each with the others at
 * zero, the outlines of force, what is left after any one loss, currents, the balance of propeller torques and the matrix
 * for a control system.
 *
 * Source   physics: `wrenchMatrix`; greatest values: `greatestAlong`; doubt: `uncertainGreatest`.
 * Assumes  the vehicle at rest in still water; thrusters and hull do not disturb each other.
 * Throws   InputProblem `vehicle.layout-zero-direction`, `vehicle.layout-same-name`, `vehicle.layout-current-twice`;
 *          OutOfDomain for numbers so far out of scale that a result is not finite.
 */
export function layoutAnswer(request: LayoutRequest): LayoutAnswer {
  refuseUnusable(request);
  const model = layoutModel(request);
  const motions = motionsOf(model.matrix, request);
  const { held } = motions;
  const current = currentForThrust(model);
  const reach = axisReach(model, held, current);
  const outlines = forceOutlines(model, held, current);
  const losses = thrusterLosses(model, held, reach);
  const ahead = reach.find(({ axis }) => axis === "surge")?.ways[0]?.greatest;
  const converged = model.tally.converged && outlines.every((one) => one.converged);
  return finiteResult({
    thrusters: request.thrusters.map(({ name }) => name),
    held: [...held],
    matrix: model.matrix.map((row) => [...row]),
    matrixWithReaction: withReaction(request),
    momentLength: motions.momentLength,
    singularValues: [...motions.singularValues],
    rank: motions.rank,
    motions: [...motions.motions],
    reach,
    outlines,
    losses,
    spinBalance: ahead && ahead.value.value > 0 ? spinBalance(request.thrusters, ahead.forces) : null,
    pseudoInverse: pseudoInverseOf(model.matrix, held),
    programmes: model.tally.programmes,
    pivots: model.tally.pivots,
    converged,
    sentence: reachSentence(reach),
    warnings: [...layoutWarnings(model, motions), ...suppliedWarnings(model), ...unsettled(converged)],
  });
}

/** Current of the bus that is left for thrust, A; null where there is no limit or a current is not known. */
function currentForThrust(model: LayoutModel): number | null {
  const { busCurrentLimit, hotelCurrent } = model.request;
  return busCurrentLimit === undefined || !currentsKnown(model) ? null : Math.max(0, busCurrentLimit - hotelCurrent);
}

function withReaction({ thrusters, centreOfMass }: LayoutRequest): LayoutAnswer["matrixWithReaction"] {
  if (thrusters.every(({ torquePerThrust }) => torquePerThrust === undefined)) return null;
  return {
    forward: wrenchMatrix(thrusters, centreOfMass, "forward"),
    reverse: wrenchMatrix(thrusters, centreOfMass, "reverse"),
  };
}

function reachSentence(reach: readonly AxisReach[]): string {
  const parts = reach.map(({ axis, unit, ways }) => {
    const each = ways.map(({ word, greatest, withBusLimit }) => {
      const value = (withBusLimit ?? greatest).value;
      const shown = value.value < 0 ? { ...value, value: -value.value, interval95: turned(value.interval95) } : value;
      return `${formatUncertain(shown, { symbol: unit, factor: 1 })} ${word}`;
    });
    return `${axis} ${each.join(" and ")}`;
  });
  if (parts.length === 0) return "The thrusters command no motion.";
  return `${capital(parts.join("; "))}; each with the other commanded motions at zero.`;
}

const turned = ([low, high]: readonly [number, number]): [number, number] => [-high, -low];

function unsettled(converged: boolean): Warning[] {
  if (converged) return [];
  const message =
    "A search ran out of steps, so a greatest value may be too small. Take thrusters of alike limits together.";
  return [{ code: "vehicle.layout-not-converged", where: "layout", message }];
}
