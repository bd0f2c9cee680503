import type { AxisReach } from "../../model/vehicle/layoutAnswer.ts";
import type { AxisLoss, ThrusterLoss } from "../../model/vehicle/layoutLoss.ts";
import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import { formatNumber } from "../../quantity/format.ts";
import { capital, listed } from "./axes.ts";
import { askOf } from "./axisAsk.ts";
import { greatestAlong } from "./greatestAlong.ts";
import { type LayoutModel, withoutThruster } from "./layoutModel.ts";
import { uncertainGreatest } from "./limitDoubt.ts";

/** A value below this part of what it was counts as nothing: rounding of the programme. */
const NOTHING = 1e-9;

/**
 * For each thruster what every axis can still do when that one makes no thrust and the same axes are held at zero.
 * The current of the bus is not counted.
 */
export function thrusterLosses(model: LayoutModel, held: readonly Axis[], reach: readonly AxisReach[]): ThrusterLoss[] {
  return model.request.thrusters.map(({ name }, thruster) => {
    const limits = withoutThruster(model.limits, thruster);
    const axes = reach.flatMap(({ axis, ways }) =>
      ways.map(({ way, word, greatest: { value: before } }): AxisLoss => {
        const ask = { axis, way, held, limits, current: null };
        const found = greatestAlong(model, askOf(ask));
        const gone = found.value <= NOTHING * Math.abs(before.value);
        const after = uncertainGreatest(model, ask, gone ? { ...found, value: 0 } : found);
        return { axis, way, word, before, after, kept: before.value === 0 ? null : after.value / before.value };
      }),
    );
    return { thruster, axes, sentence: lossSentence(name, axes) };
  });
}

/** What goes, what shrinks most and that the rest stays. */
function lossSentence(name: string, axes: readonly AxisLoss[]): string {
  const could = axes.filter(({ kept }) => kept !== null);
  const gone = [...new Set(could.filter(({ kept }) => kept === 0).map(({ axis }) => axis))].filter((axis) =>
    could.every((one) => one.axis !== axis || one.kept === 0),
  );
  const less = could.filter(({ axis, kept }) => !gone.includes(axis) && kept! < 1 - 1e-6);
  if (gone.length === 0 && less.length === 0) return `Without ${name} nothing that is commanded gets weaker.`;
  const parts: string[] = [];
  if (gone.length > 0)
    parts.push(`${listed(gone)} ${gone.length > 1 ? "are" : "is"} gone, with the other commanded motions kept at zero`);
  if (less.length > 0) {
    const worst = less.reduce((least, one) => (one.kept! < least.kept! ? one : least));
    parts.push(
      `the weakest that is left is ${worst.axis} ${worst.word} at ${formatNumber(100 * worst.kept!, 2)} %, the current of the bus not counted`,
    );
  }
  return capital(`without ${name} ${parts.join("; ")}.`);
}
