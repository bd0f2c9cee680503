import { formatNumber } from "../../../../shared/quantity/format.ts";
import {
  type DrawnThruster,
  type LayoutPicture,
  type LayoutView,
  type PictureLine,
  type PicturePoint,
  projectLayout,
} from "../../../../shared/vehicle/layout/projectLayout.ts";
import { pushInWords } from "../build/thrusters/direction.ts";

/** Named views, in the order of the buttons. */
export const VIEWS: readonly { readonly label: string; readonly view: LayoutView }[] = [
  { label: "From above", view: { azimuth: 0, elevation: Math.PI / 2 } },
  { label: "From starboard", view: { azimuth: Math.PI / 2, elevation: 0 } },
  { label: "From astern", view: { azimuth: 0, elevation: 0 } },
  { label: "Askew", view: { azimuth: 0.6, elevation: 0.5 } },
];
export const FIRST_VIEW = VIEWS[3]!.view;

/** A step of an arrow key, and the turn of a drag over the whole picture, rad. */
const KEY_STEP = Math.PI / 18;
const DRAG_TURN = Math.PI;

const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const within = (elevation: number) => Math.min(Math.PI / 2, Math.max(-Math.PI / 2, elevation));

/** The view after an arrow key; null for another key. */
export function turnedByKey({ azimuth, elevation }: LayoutView, key: string): LayoutView | null {
  const step = KEYS[key];
  if (step === undefined) return null;
  return { azimuth: azimuth + step[0] * KEY_STEP, elevation: within(elevation + step[1] * KEY_STEP) };
}

/** The view after a drag by parts of the width and height of the picture. */
export function turnedByDrag({ azimuth, elevation }: LayoutView, across: number, down: number): LayoutView {
  return { azimuth: azimuth - across * DRAG_TURN, elevation: within(elevation + down * DRAG_TURN) };
}

export const isView = (one: LayoutView, other: LayoutView): boolean =>
  one.azimuth === other.azimuth && one.elevation === other.elevation;

export interface DrawnPicture {
  readonly lines: readonly PictureLine[];
  /** For `viewBox`: left, top, width, height in the unit of the picture. */
  readonly box: readonly [number, number, number, number];
  /** Numbers at the tips of the arrows. */
  readonly tags: readonly { readonly at: PicturePoint; readonly text: string }[];
  readonly axes: readonly { readonly at: PicturePoint; readonly text: string }[];
}

/** Drawing units over the whole picture, so that line widths and letters need no scale of their own. */
const DRAWN_SIZE = 100;
const ROOM = 10;

/** Every view of one vehicle has one scale: the picture does not breathe while it is turned. */
export function drawnPicture(thrusters: readonly DrawnThruster[], view: LayoutView): DrawnPicture {
  const reach = Math.max(...VIEWS.flatMap((one) => projectLayout(thrusters, one.view).bounds.map(Math.abs)), 1e-6);
  const scale = DRAWN_SIZE / 2 / reach;
  const picture = scaledPicture(projectLayout(thrusters, view), scale);
  const half = DRAWN_SIZE / 2 + ROOM;
  const tip = ({ points }: PictureLine): PicturePoint => beyond(points[0]!, points.at(-1)!);
  return {
    lines: picture.lines,
    box: [-half, -half, 2 * half, 2 * half],
    tags: picture.lines
      .filter(({ role }) => role === "thrust")
      .map((line) => ({ at: tip(line), text: String(line.thruster! + 1) })),
    axes: picture.lines
      .filter(({ role, points }) => role === "axis" && lengthOf(points) > ROOM)
      .map((line) => ({ at: tip(line), text: line.label })),
  };
}

function scaledPicture(picture: LayoutPicture, scale: number): LayoutPicture {
  const point = ([x, y]: PicturePoint): PicturePoint => [scale * x, scale * y];
  return { ...picture, lines: picture.lines.map((line) => ({ ...line, points: line.points.map(point) })) };
}

const lengthOf = (points: readonly PicturePoint[]) => {
  const [[x0, y0], [x1, y1]] = [points[0]!, points.at(-1)!];
  return Math.hypot(x1 - x0, y1 - y0);
};

/** A little beyond the end of a line; above a line that is seen end on. */
function beyond([x0, y0]: PicturePoint, [x1, y1]: PicturePoint): PicturePoint {
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length < 1) return [x1 + 4, y1 - 4];
  return [x1 + (4 * (x1 - x0)) / length, y1 + (4 * (y1 - y0)) / length];
}

/** The same in words: where each thruster sits and which way it pushes. */
export function layoutInWords(thrusters: readonly DrawnThruster[]): string[] {
  return thrusters.map(({ name, position, direction, spin }, at) => {
    const places = [
      placeInWords(position.x, "ahead", "astern"),
      placeInWords(position.y, "to starboard", "to port"),
      placeInWords(position.z, "down", "up"),
    ].filter((words) => words !== "");
    const where = places.length === 0 ? "at the origin" : places.join(", ");
    return `${at + 1} ${name}: ${where}; pushes ${pushInWords(direction)}, turning ${spin}.`;
  });
}

function placeInWords(metres: number, positive: string, negative: string): string {
  if (metres === 0) return "";
  return `${Number(formatNumber(Math.abs(metres) * 1000, 4))} mm ${metres > 0 ? positive : negative}`;
}
