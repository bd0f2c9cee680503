import { describe, expect, test } from "vitest";
import { LayoutAnswer } from "../../shared/model/vehicle/layoutAnswer.ts";
import { type LayoutInput, LayoutRequest } from "../../shared/model/vehicle/layoutRequest.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import * as L from "./vehicleLayouts.ts";
import { ahead, at, codesOf } from "./vehicleLayouts.ts";

const textOf = ({ warnings }: Pick<LayoutAnswer, "warnings">, code: string) =>
  warnings.find((one) => one.code === code)?.message;

test("the answer is the document that is promised, also through JSON", () => {
  const request = L.unlike({ busCurrentLimit: 12 }, () => ({
    current: { forward: [{ thrust: 10, current: 6 }], reverse: [{ thrust: 6, current: 5 }] },
    torquePerThrust: { forward: 0.012, reverse: 0.015 },
  }));
  const answer = layoutAnswer(request);
  expect(LayoutAnswer.parse(JSON.parse(JSON.stringify(answer)))).toEqual(answer);
});

describe("which motions there are, in words", () => {
  const answer = layoutAnswer(L.layoutOf(L.STERN_PAIR));

  test("what no thruster acts on is not held, and it is said", () => {
    expect(answer.held).toEqual(["surge", "heave", "yaw"]);
    expect(answer.rank).toBe(3);
    expect(textOf(answer, "vehicle.layout-not-commanded")).toContain("sway, roll and pitch");
    expect(textOf(answer, "vehicle.layout-few-thrusters")).toContain("3 thrusters can command at most 3");
    expect(answer.motions[1]!.sentence).toBe("Sway cannot be commanded: no thruster acts on it.");
  });

  test("a motion that comes along with another names it and how much", () => {
    // By hand: thrust 0.05 m below the centre lifts the bow by 0.05 N m for each N ahead (M = z X).
    const low = layoutAnswer(
      L.layoutOf([
        [at(-0.2, -0.1, 0.05), ahead],
        [at(-0.2, 0.1, 0.05), ahead],
      ]),
    );
    expect(low.held).toEqual(["surge", "yaw"]);
    expect(low.motions[4]!.possible).toBe("together");
    expect(low.motions[4]!.comesWith).toHaveLength(1);
    expect(low.motions[4]!.comesWith[0]!.each).toBeCloseTo(0.05, 12);
    expect(low.motions[4]!.sentence).toBe(
      "Pitch cannot be commanded on its own: it comes along with surge (0.0500 N·m for each N).",
    );
    expect(low.reach[0]!.ways[0]!.greatest.wrench[4]).toBeCloseTo(0.05 * 20, 10);
  });

  test("roll that comes with sway is told where all possible motions are held", () => {
    const low = layoutAnswer(L.layoutOf(L.LOW_THRUST));
    expect(low.held).toEqual(["surge", "sway", "heave", "pitch", "yaw"]);
    expect(low.motions[3]!.comesWith.map(({ axis }) => axis)).toEqual(["sway"]);
  });

  test("an axis that is left out by choice is called free", () => {
    const free = layoutAnswer(L.layoutOf(L.VECTORED, 6, { axes: ["surge", "yaw"] }));
    expect(free.motions[1]!.sentence).toBe("Sway could be commanded; here it is left free.");
  });

  test("an axis that is asked for in vain is told, and one that binds another too", () => {
    expect(codesOf(layoutAnswer(L.layoutOf(L.STERN_PAIR, 6, { axes: ["surge", "sway"] })))).toContain(
      "vehicle.layout-asked-in-vain",
    );
    const bound = layoutAnswer(L.layoutOf([[at(-0.2, 0, 0.05), ahead]], 6, { axes: ["surge", "pitch"] }));
    expect(codesOf(bound)).toContain("vehicle.layout-held-together");
    expect(bound.reach[0]!.ways[0]!.greatest.value.value).toBe(0);
  });
});

describe("arrangements that are explained and not refused", () => {
  test.each([
    ["one thruster through the centre", [[at(-0.3, 0), ahead]], "vehicle.layout-through-centre"],
    [
      "two at one place",
      [
        [at(-0.3, 0.1), ahead],
        [at(-0.3, 0.1), ahead],
      ],
      "vehicle.layout-same-place",
    ],
    [
      "two on one line, opposed",
      [
        [at(-0.3, 0.1), ahead],
        [at(0.3, 0.1), [-1, 0, 0]],
      ],
      "vehicle.layout-one-line",
    ],
    [
      "two nearly parallel ones",
      [
        [at(0, 0.1), ahead],
        [at(0, 0.101), ahead],
      ],
      "vehicle.layout-weak",
    ],
    ["one on the centre", [[at(0, 0), ahead]], "vehicle.layout-through-centre"],
  ] as const)("%s", (_, placed, code) => {
    const answer = layoutAnswer(L.layoutOf(placed as never));
    expect(codesOf(answer)).toContain(code);
    expect(answer.converged).toBe(true);
    expect(answer.reach[0]!.ways[0]!.greatest.value.value).toBeGreaterThan(0);
  });

  test("a vectored layout of four has none of these", () => {
    expect(codesOf(layoutAnswer(L.layoutOf(L.VECTORED)))).toEqual([
      "vehicle.layout-few-thrusters",
      "vehicle.layout-not-commanded",
    ]);
  });

  test("a thruster without thrust counts as lost", () => {
    const answer = layoutAnswer(L.layoutOf(L.VECTORED, 6, {}, (i) => (i === 0 ? L.limited(0, 0) : {})));
    expect(codesOf(answer)).toContain("vehicle.layout-no-thrust");
    const lost = layoutAnswer(L.layoutOf(L.VECTORED)).losses[0]!;
    expect(answer.reach[0]!.ways[0]!.greatest.value.value).toBeCloseTo(lost.axes[0]!.after.value, 9);
  });
});

describe("what is refused", () => {
  const broken = (change: (request: LayoutInput) => void) => {
    const request = structuredClone(L.layoutOf(L.VECTORED)) as LayoutInput;
    change(request);
    return () => layoutAnswer(LayoutRequest.parse(request));
  };

  test("a direction without length, with its place", () => {
    expect(broken((one) => Object.assign(one.thrusters[2]!.direction, { x: 0, y: 0, z: 0 }))).toThrow(
      "thrusters.2.direction: The direction has no length",
    );
  });

  test("two thrusters of one name", () => {
    expect(broken((one) => Object.assign(one.thrusters[1]!, { name: "T1" }))).toThrow("Two thrusters are called T1");
  });

  test("two currents at one thrust", () => {
    const points = [
      { thrust: 5, current: 2 },
      { thrust: 5, current: 3 },
    ];
    const current = { forward: points, reverse: points };
    expect(broken((one) => Object.assign(one.thrusters[0]!, { current }))).toThrow("two currents at one thrust");
  });

  test.each([
    ["a limit that is negative", { limits: { forward: { value: -1 }, reverse: { value: 6 } } }],
    ["a position that is no number", { position: { x: Number.NaN, y: 0, z: 0 } }],
    ["a spin that is no sense", { spin: "left" }],
  ])("%s", (_, wrong) => {
    expect(broken((one) => Object.assign(one.thrusters[0]!, wrong))).toThrow();
  });
});

describe("torque of the propellers", () => {
  const torque = { torquePerThrust: { forward: 0.012, reverse: 0.015 } };

  test("thrust ahead turns the vehicle against a clockwise propeller, to port side down", () => {
    // By hand: 2 thrusters of 10 N with 0.012 N m/N: K = -0.24 N m; with one propeller of the other hand 0.
    const answer = layoutAnswer(L.layoutOf(L.STERN_PAIR, 6, {}, () => torque));
    expect(answer.spinBalance!.residual[0]).toBeCloseTo(-0.24, 12);
    expect(answer.spinBalance!.changed).toEqual([0]);
    expect(answer.spinBalance!.best).toEqual([0, 0, 0]);
    expect(answer.spinBalance!.sentence).toContain("With the other sense of rotation on T1 nothing is left");
    expect(answer.matrixWithReaction!.reverse[3]![0]).toBeCloseTo(-0.015, 12);
  });

  test("a pair that turns opposite ways is balanced", () => {
    const answer = layoutAnswer(
      L.layoutOf(L.STERN_PAIR, 6, {}, (i) => ({ ...torque, spin: i === 0 ? "clockwise" : "anticlockwise" })),
    );
    expect(answer.spinBalance!.sentence).toBe("Full ahead the torques of the propellers cancel.");
  });

  test("without torque nothing is said of it", () => {
    const answer = layoutAnswer(L.layoutOf(L.STERN_PAIR));
    expect([answer.spinBalance, answer.matrixWithReaction]).toEqual([null, null]);
  });
});

test("an unheld moment tilts the vehicle until the righting moment equals it", () => {
  // By hand: 2 x 10 N at 0.05 m is 1 N m; W h = 100 x 0.02 = 2 N m; asin 0.5 = 30 degrees, bow up.
  const placed = [
    [at(-0.2, -0.1, 0.05), ahead],
    [at(-0.2, 0.1, 0.05), ahead],
  ] as never;
  const answer = (weight: number) =>
    layoutAnswer(L.layoutOf(placed, 6, { righting: { weight, centreOfBuoyancy: { x: 0, y: 0, z: -0.02 } } }));
  expect(answer(100).reach[0]!.ways[0]!.tilt!.pitch).toBeCloseTo(Math.PI / 6, 10);
  expect(answer(40).reach[0]!.ways[0]!.tilt!.pitch).toBeNull();
});

test("the sentence on a loss says what is gone and what is weakest", () => {
  const { losses } = layoutAnswer(L.layoutOf(L.STERN_PAIR, 6, {}, (i) => (i === 2 ? L.limited(8, 5) : {})));
  expect(losses[0]!.sentence).toBe("Without T1 surge and yaw are gone, with the other commanded motions kept at zero.");
  expect(layoutAnswer(L.layoutOf(L.VECTORED)).losses[0]!.sentence).toContain("at 50 %");
});
