import { expect, test } from "vitest";
import { type PictureLine, projectLayout } from "../../shared/vehicle/layout/projectLayout.ts";
import * as L from "./vehicleLayouts.ts";

const { thrusters } = L.layoutOf(L.STERN_PAIR);
const quarter = Math.PI / 2;

function wayOf(lines: readonly PictureLine[], label: string): number[] {
  const { points } = lines.find((one) => one.label === label)!;
  const [from, to] = [points[0]!, points.at(-1)!];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length < 1e-9
    ? [0, 0]
    : [(to[0] - from[0]) / length, (to[1] - from[1]) / length].map((one) => Math.round(one) + 0);
}

test.each([
  ["from astern", { azimuth: 0, elevation: 0 }, { "x ahead": [0, 0], "y starboard": [1, 0], "z down": [0, 1] }],
  [
    "the starboard side",
    { azimuth: quarter, elevation: 0 },
    { "x ahead": [1, 0], "y starboard": [0, 0], "z down": [0, 1] },
  ],
  ["from above", { azimuth: 0, elevation: quarter }, { "x ahead": [0, -1], "y starboard": [1, 0], "z down": [0, 0] }],
  [
    "from the bow",
    { azimuth: 2 * quarter, elevation: 0 },
    { "x ahead": [0, 0], "y starboard": [-1, 0], "z down": [0, 1] },
  ],
] as const)("%s the axes point where they do on a drawing", (_, view, expected) => {
  const { lines } = projectLayout(thrusters, view);
  for (const [label, way] of Object.entries(expected)) expect(wayOf(lines, label)).toEqual(way);
});

test("each thruster has an arrow and an arc, the box twelve edges of which three are behind", () => {
  const { lines } = projectLayout(thrusters, { azimuth: 0.6, elevation: 0.4 });
  const count = (role: PictureLine["role"]) => lines.filter((one) => one.role === role).length;
  expect([count("thrust"), count("spin"), count("hull"), count("hullBehind"), count("axis")]).toEqual([3, 3, 9, 3, 3]);
});

test("what is farther comes first, and all points lie inside the bounds", () => {
  const { lines, bounds } = projectLayout(thrusters, { azimuth: 0.6, elevation: 0.4 });
  expect(lines.map(({ depth }) => depth)).toEqual(lines.map(({ depth }) => depth).sort((a, b) => b - a));
  for (const [x, y] of lines.flatMap(({ points }) => points)) {
    expect(x).toBeGreaterThanOrEqual(bounds[0]);
    expect(y).toBeLessThanOrEqual(bounds[3]);
  }
});

test("seen from behind, a clockwise propeller's arc runs clockwise on the picture", () => {
  const arc = (spin: "clockwise" | "anticlockwise") => {
    const one = { ...thrusters[0]!, spin, position: { x: 0, y: 0, z: 0 } };
    const { points } = projectLayout([one], { azimuth: 0, elevation: 0 }).lines.find(({ role }) => role === "spin")!;
    // Twice the signed area; with y downwards it is positive clockwise.
    return points.slice(1).reduce((sum, [x, y], k) => sum + points[k]![0] * y - points[k]![1] * x, 0);
  };
  expect(arc("clockwise")).toBeGreaterThan(0);
  expect(arc("anticlockwise")).toBeLessThan(0);
});
