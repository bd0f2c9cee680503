import type { Watts } from "./wattFlow.ts";

/** A share of the stream as it is drawn, CSS pixels. */
export interface StripBranch {
  readonly flow: Watts;
  /** Number by which the list beneath names it, from 1. */
  readonly number: number;
  /** Outline of the stream that leaves. */
  readonly path: string;
  /** Where its number stands. */
  readonly at: { readonly x: number; readonly y: number };
}

export interface StripShape {
  readonly width: number;
  readonly height: number;
  /** Outline of what goes on to the right. */
  readonly trunk: string;
  readonly branches: readonly StripBranch[];
}

/** Height of the whole stream where it starts, px. */
const STREAM = 120;
const TOP = 6;
/** Length of the point at the end of a stream, px. */
const POINT = 9;
/** Room for the numbers under the branches, px. */
const NUMBERS = 24;
/** A stream thinner than this could not be seen, px. */
const THINNEST = 1.5;

/**
 * The stream of power from left to right: its height is the power, what is lost or used bends down and leaves, what
 * pushes the water goes out on the right. Thicknesses are to scale but for streams that would be too thin to see.
 */
export function stripShape(flows: readonly Watts[], width: number): StripShape {
  const leaving = flows.filter(({ kind }) => kind !== "push");
  const push = flows.find(({ kind }) => kind === "push");
  const start = 34;
  const step = leaving.length === 0 ? 0 : (width - start - 60) / leaving.length;
  let left = STREAM;
  const edge: string[] = [];
  const branches = leaving.map((flow, index): StripBranch => {
    const thick = Math.max(THINNEST, STREAM * flow.share);
    const right = start + (index + 0.78) * step;
    const before = left;
    left = Math.max(0, left - STREAM * flow.share);
    edge.push(`L${px(right - thick)} ${px(TOP + before)}`, `L${px(right)} ${px(TOP + left)}`);
    return { flow, number: index + 1, ...branchShape(right, thick, before, left) };
  });
  const end = width - POINT - 2;
  const middle = TOP + left / 2;
  const nose =
    push === undefined
      ? `L${px(end)} ${px(TOP + left)} L${px(end)} ${TOP}`
      : `L${px(end)} ${px(TOP + left)} L${px(width - 2)} ${px(middle)} L${px(end)} ${TOP}`;
  return {
    width,
    height: TOP + STREAM + 30 + POINT + NUMBERS,
    trunk: `M2 ${TOP} L2 ${TOP + STREAM} ${edge.join(" ")} ${nose} Z`,
    branches,
  };
}

/** A stream that leaves the under side of the trunk, bends down and ends in a point. */
function branchShape(right: number, thick: number, before: number, after: number): Pick<StripBranch, "path" | "at"> {
  const leftEdge = right - thick;
  const floor = TOP + STREAM + 22;
  const tip = floor + POINT;
  const middle = leftEdge + thick / 2;
  const wing = Math.max(3, Math.min(5, thick / 3));
  const path = [
    `M${px(leftEdge)} ${px(TOP + before)}`,
    `L${px(right)} ${px(TOP + after)}`,
    `L${px(right)} ${px(floor)} L${px(right + wing)} ${px(floor)}`,
    `L${px(middle)} ${px(tip)}`,
    `L${px(leftEdge - wing)} ${px(floor)} L${px(leftEdge)} ${px(floor)} Z`,
  ].join(" ");
  return { path, at: { x: middle, y: tip + 15 } };
}

function px(length: number): number {
  return Math.round(length * 10) / 10;
}
