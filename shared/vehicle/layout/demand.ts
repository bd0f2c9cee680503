import type { Demand } from "../../model/vehicle/layoutAnswer.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { type AxisAsk, askOf } from "./axisAsk.ts";
import { totalCurrent } from "./currentLaw.ts";
import { cheapestThrusts, type Greatest, greatestAlong } from "./greatestAlong.ts";
import { currentsKnown, type LayoutModel, type Limits } from "./layoutModel.ts";
import { currentVariance, uncertainGreatest } from "./limitDoubt.ts";
import { reactionOf, wrenchOf } from "./wrenchMatrix.ts";

/** Rounding of an optimum, as a part of the greatest limit or thrust. */
const ROUNDING = 1e-9;

/** One axis one way with the thrusts that make it, what comes with it and what it draws. */
export function demandOf(model: LayoutModel, ask: AxisAsk): Demand {
  const { request, limits } = model;
  const found = greatestAlong(model, askOf(ask));
  const nothing = found.value <= ROUNDING * Math.max(...limits.map((one) => Math.max(one.forward, one.reverse)));
  const forces = nothing ? limits.map(() => 0) : cleaned(cheapestAt(model, ask, found), limits);
  const current = totalCurrent(request.thrusters, forces, request.hotelCurrent);
  const { busCurrentLimit } = request;
  // What the bus bounds is as much as it gives, however much thrust that is.
  const isFull = ask.current !== null && current !== null && current >= busCurrentLimit! * (1 - ROUNDING);
  return {
    value: uncertainGreatest(model, ask, nothing ? { ...found, value: 0 } : found),
    forces,
    wrench: wrenchOf(model.matrix, forces),
    reaction: reactionOf(request.thrusters, forces)?.slice() ?? null,
    current: current === null ? null : uncertain(current, isFull ? 0 : Math.sqrt(currentVariance(model, forces))),
    withinBusLimit:
      current === null || busCurrentLimit === undefined ? null : current <= busCurrentLimit * (1 + ROUNDING),
    governedBy: nothing ? [] : found.governedBy.map((one) => ({ ...one })),
  };
}

/** The same optimum with the least current: a programme that only looks at the axis may let thrusters push against each other. */
function cheapestAt(model: LayoutModel, ask: AxisAsk, found: Greatest): readonly number[] {
  const { along, hold } = askOf(ask);
  const cost = currentsKnown(model) ? "current" : "effort";
  const at = found.value * (1 - 1e-12);
  const cheapest = cheapestThrusts(model, { hold: [...hold, { wrench: along, at }], limits: ask.limits }, cost);
  return cheapest.found ? cheapest.forces : found.forces;
}

/** Without the dust that sums of pieces leave: what is zero or a limit but for rounding is that. */
function cleaned(forces: readonly number[], limits: Limits): number[] {
  const near = ROUNDING * Math.max(...forces.map(Math.abs));
  return forces.map((one, i) => {
    const ends = [0, limits[i]!.forward, -limits[i]!.reverse];
    return ends.find((end) => Math.abs(one - end) <= near) ?? one;
  });
}
