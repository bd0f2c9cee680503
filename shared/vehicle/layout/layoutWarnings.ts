import type { LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { Warning } from "../../quantity/warning.ts";
import { listed } from "./axes.ts";
import type { LayoutModel } from "./layoutModel.ts";
import type { Motions } from "./motions.ts";
import { armOf, cross, size, unitDirection, type Vector } from "./wrenchMatrix.ts";

/** Ratio of the smallest singular value that counts to the greatest, below which a motion is weak; common practice, no source. */
const WEAK = 0.05;
/** Places nearer than this part of the size of the layout count as one. */
const NEAR = 1e-6;

/** What a builder should know of the arrangement itself; nothing of it is refused. */
export function layoutWarnings(model: LayoutModel, motions: Motions): Warning[] {
  return [...motionWarnings(model.request, motions), ...placeWarnings(model.request, motions.momentLength)];
}

function motionWarnings({ thrusters, axes }: LayoutRequest, motions: Motions): Warning[] {
  const { rank, held, singularValues } = motions;
  const found: Warning[] = [];
  const say = (code: string, where: string, message: string) => found.push({ code, where, message });
  const count = thrusters.length;
  if (count < 6)
    say(
      "vehicle.layout-few-thrusters",
      "thrusters",
      `${count === 1 ? "One thruster" : `${count} thrusters`} can command at most ${count} of the six motions; these command ${rank}.`,
    );
  const none = motions.motions.filter(({ possible }) => possible === "none").map(({ axis }) => axis);
  if (none.length > 0)
    say(
      "vehicle.layout-not-commanded",
      "thrusters",
      `No thruster acts on ${listed(none)}: the vehicle must do without or right itself.`,
    );
  for (const { axis, comesWith, sentence } of motions.motions)
    if (comesWith.length > 0) say("vehicle.layout-coupled", axis, sentence);
  if (axes !== undefined && held.length < new Set(axes).size) {
    const idle = axes.filter((axis) => !held.includes(axis));
    say(
      "vehicle.layout-asked-in-vain",
      "axes",
      `${listed(idle)} was asked for, but no thruster acts on it, so it is not held.`,
    );
  }
  const { independent } = motions;
  if (independent < held.length)
    say(
      "vehicle.layout-held-together",
      "axes",
      `The ${held.length} motions held are only ${independent} independent ones: holding all of them keeps some at zero. Leave one out that may come along.`,
    );
  const last = singularValues[rank - 1] ?? 0;
  if (rank > 1 && last < WEAK * singularValues[0]!)
    say(
      "vehicle.layout-weak",
      "thrusters",
      `One combination of motions is weak: it is ${formatNumber(singularValues[0]! / last, 2)} times harder to make than the easiest (moments over ${formatNumber(motions.momentLength)} m).`,
    );
  return found;
}

function placeWarnings({ thrusters, centreOfMass }: LayoutRequest, length: number): Warning[] {
  const lines = thrusters.map((one, i) => ({
    name: one.name,
    arm: armOf(one, centreOfMass),
    d: unitDirection(one.direction, `thrusters.${i}.direction`),
  }));
  const found: Warning[] = [];
  const say = (code: string, where: string, message: string) => found.push({ code, where, message });
  const central = lines.filter(({ arm, d }) => size(cross(arm, d)) <= NEAR * length);
  if (central.length > 0)
    say(
      "vehicle.layout-through-centre",
      "thrusters",
      `${listed(central.map(({ name }) => name))} ${central.length > 1 ? "push" : "pushes"} through the centre of mass and ${central.length > 1 ? "turn" : "turns"} the vehicle no way.`,
    );
  for (const { first, names, atOnePlace } of sharedLines(lines, length)) {
    const how = atOnePlace ? "sit at one place and push along one line" : "push along one line";
    say(
      atOnePlace ? "vehicle.layout-same-place" : "vehicle.layout-one-line",
      `thrusters.${first}`,
      `${listed(names)} ${how}: they act as one stronger thruster and command no motion more.`,
    );
  }
  thrusters.forEach(({ name, limits }, i) => {
    if (limits.forward.value === 0 && limits.reverse.value === 0)
      say(
        "vehicle.layout-no-thrust",
        `thrusters.${i}.limits`,
        `${name} has no thrust either way, so it counts as lost.`,
      );
  });
  return found;
}

interface Line {
  readonly name: string;
  readonly arm: Vector;
  readonly d: Vector;
}

/** Thrusters that push along one line, each line once. */
function sharedLines(lines: readonly Line[], length: number) {
  const offset = ({ arm: [x, y, z] }: Line, { arm }: Line): Vector => [x - arm[0], y - arm[1], z - arm[2]];
  const isShared = (a: Line, b: Line) =>
    size(cross(a.d, b.d)) <= NEAR && size(cross(offset(a, b), a.d)) <= NEAR * length;
  return lines.flatMap((a, first) => {
    if (lines.findIndex((other) => isShared(a, other)) < first) return [];
    const on = lines.filter((other) => isShared(a, other));
    const atOnePlace = on.every((other) => size(offset(a, other)) <= NEAR * length);
    return on.length < 2 ? [] : [{ first, names: on.map(({ name }) => name), atOnePlace }];
  });
}
