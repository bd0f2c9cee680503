import type { AllocationRow, AllocationTable } from "../../model/vehicle/allocationTable.ts";
import type { Demand, LayoutAnswer } from "../../model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { csvText } from "../../quantity/csvCell.ts";
import { formatNumber } from "../../quantity/format.ts";
import { allocator, type Wanted } from "./allocate.ts";
import { AXES, AXIS_WORDS } from "./axes.ts";

const CAUTIONS = [
  "Try each thruster alone and slowly, out of reach of hands, to see that its sign and place in the order are right.",
  "Computed for still water at rest; a control system must keep its own limits of thrust and current.",
];

/**
 * The shares of the thrusters for a control system, as text for a spreadsheet and as data: the greatest demand of each axis
 * and way, the combinations that are asked for (as much of each as the limits allow), and the pseudo-inverse.
 *
 * Throws   InputProblem `vehicle.layout-not-held` for a combination with an axis that is not commanded.
 */
export function allocationTable(
  request: LayoutRequest,
  answer: LayoutAnswer,
  combinations: readonly Wanted[] = [],
): { readonly csv: string; readonly json: AllocationTable } {
  const table: AllocationTable = {
    thrusters: [...answer.thrusters],
    limits: {
      forward: request.thrusters.map(({ limits }) => limits.forward.value),
      reverse: request.thrusters.map(({ limits }) => 0 - limits.reverse.value),
    },
    axes: [...answer.held],
    pseudoInverse: answer.pseudoInverse.map((row) => [...row]),
    wrenchMatrix: answer.matrix.map((row) => [...row]),
    rows: [...greatestRows(answer), ...combinedRows(request, combinations), ...shareRows(answer)],
    cautions: CAUTIONS,
  };
  return { csv: csvOf(table), json: table };
}

function greatestRows({ reach }: LayoutAnswer): AllocationRow[] {
  return reach.flatMap(({ axis, unit, ways }) =>
    ways.flatMap(({ word, greatest, withBusLimit }) => {
      const row = (kind: AllocationRow["kind"], { value, forces, current }: Demand): AllocationRow => ({
        kind,
        axis,
        way: word,
        demand: value.value,
        unit,
        interval95: [...value.interval95],
        current: current?.value ?? null,
        forces: [...forces],
      });
      return [row("greatest", greatest), ...(withBusLimit ? [row("greatest within bus", withBusLimit)] : [])];
    }),
  );
}

function combinedRows(request: LayoutRequest, combinations: readonly Wanted[]): AllocationRow[] {
  if (combinations.length === 0) return [];
  const share = allocator(request);
  return combinations.map((wanted) => {
    const { forces, current, scale } = share(wanted);
    const axis = AXES.filter((one) => wanted[one])
      .map((one) => `${one} ${formatNumber(scale * wanted[one]!, 4)} ${AXIS_WORDS[one].unit}`)
      .join(" with ");
    const way = scale < 1 ? `${formatNumber(100 * scale, 3)} % of what was asked for` : "as asked for";
    return { kind: "combination", axis, way, demand: null, unit: "", interval95: null, current, forces };
  });
}

function shareRows({ held, pseudoInverse }: LayoutAnswer): AllocationRow[] {
  return held.map((axis, k) => ({
    kind: "share of 1 unit",
    axis,
    way: AXIS_WORDS[axis].positive,
    demand: 1,
    unit: AXIS_WORDS[axis].unit,
    interval95: null,
    current: null,
    forces: pseudoInverse.map((row) => row[k]!),
  }));
}

function csvOf({ thrusters, limits, rows }: AllocationTable): string {
  const head = [
    "Row",
    "Axis",
    "Way",
    "Demand",
    "Unit of demand",
    "Low end of 95 %",
    "High end of 95 %",
    "Current of the bus (A)",
    ...thrusters.map((name) => `${name} (N)`),
  ];
  const limit = (way: string, thrusts: readonly number[]) => ["limit", "", way, null, "", null, null, null, ...thrusts];
  return csvText([
    head,
    limit("thrust ahead", limits.forward),
    limit("thrust astern", limits.reverse),
    ...rows.map(({ kind, axis, way, demand, unit, interval95, current, forces }) => [
      kind,
      axis,
      way,
      demand,
      unit,
      interval95?.[0] ?? null,
      interval95?.[1] ?? null,
      current,
      ...forces,
    ]),
  ]);
}
