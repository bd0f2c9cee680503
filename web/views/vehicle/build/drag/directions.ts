import type {
  AddedMass,
  AxisDrag,
  DirectionDrag,
  ResolvedDrag,
  VehicleDrag,
} from "../../../../../shared/model/vehicle/drag.ts";
import { without } from "../buildModel.ts";

/** Motions whose drag can be given, in the order of the card. */
export type DragWay = "forward" | "astern" | "sideways" | "down" | "up";
export type DragAxis = "surge" | "sway" | "heave";

export interface WayWords {
  readonly way: DragWay;
  readonly axis: DragAxis;
  readonly label: string;
  /** The way whose drag is taken where this one has none of its own. */
  readonly like?: DragWay;
}

export const DRAG_WAYS: readonly WayWords[] = [
  { way: "forward", axis: "surge", label: "Ahead" },
  { way: "astern", axis: "surge", label: "Astern", like: "forward" },
  { way: "sideways", axis: "sway", label: "Sideways" },
  { way: "down", axis: "heave", label: "Down" },
  { way: "up", axis: "heave", label: "Up", like: "down" },
];

export const wordsOf = (way: DragWay): WayWords => DRAG_WAYS.find((one) => one.way === way)!;

/** What is given for a motion itself; undefined where nothing is. */
export function givenDrag({ surge, sway, heave }: VehicleDrag, way: DragWay): DirectionDrag | undefined {
  return { forward: surge?.forward, astern: surge?.astern, sideways: sway?.sideways, down: heave?.down, up: heave?.up }[
    way
  ];
}

/** The drag of a motion as it is used; null where nothing is given. */
export function resolvedDrag({ surge, sway, heave }: AxisDrag, way: DragWay): ResolvedDrag | null {
  return (
    { forward: surge?.forward, astern: surge?.astern, sideways: sway, down: heave?.down, up: heave?.up }[way] ?? null
  );
}

/** A drag with one motion given. Astern without ahead, and up without down, are given for both. */
export function withDrag(drag: VehicleDrag, way: DragWay, given: DirectionDrag): VehicleDrag {
  const { surge, sway, heave } = drag;
  switch (way) {
    case "forward":
      return { ...drag, surge: { ...surge, forward: given } };
    case "astern":
      return { ...drag, surge: surge ? { ...surge, astern: given } : { forward: given } };
    case "sideways":
      return { ...drag, sway: { ...sway, sideways: given } };
    case "down":
      return { ...drag, heave: { ...heave, down: given } };
    case "up":
      return { ...drag, heave: heave ? { ...heave, up: given } : { down: given } };
  }
}

/** A drag without one motion: astern is then as ahead, and up as down; without ahead or down the axis is not given. */
export function withoutDrag(drag: VehicleDrag, way: DragWay): VehicleDrag {
  const { surge, heave } = drag;
  if (way === "astern") return surge ? { ...drag, surge: without(surge, "astern") as typeof surge } : drag;
  if (way === "up") return heave ? { ...drag, heave: without(heave, "up") as typeof heave } : drag;
  return without(drag, wordsOf(way).axis) as VehicleDrag;
}

/** A drag with the added mass of an axis; null takes it away. */
export function withAddedMass(drag: VehicleDrag, axis: DragAxis, addedMass: AddedMass | null): VehicleDrag {
  const now = drag[axis];
  if (now === undefined) return drag;
  return { ...drag, [axis]: addedMass === null ? without(now, "addedMass" as never) : { ...now, addedMass } };
}
