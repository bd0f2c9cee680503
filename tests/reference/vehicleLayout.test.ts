import { describe, expect, test } from "vitest";
import type { LayoutAnswer } from "../../shared/model/vehicle/layoutAnswer.ts";
import type { Axis, LayoutRequest } from "../../shared/model/vehicle/layoutRequest.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import { relative } from "../relative.ts";
import * as L from "../unit/vehicleLayouts.ts";

type Pairs = Partial<Record<Axis, readonly [number, number]>>;

const r = Math.SQRT1_2;
const both = (value: number) => [value, -value] as const;

function soundOf({ reach }: LayoutAnswer): Pairs {
  return Object.fromEntries(reach.map(({ axis, ways }) => [axis, ways.map((one) => one.greatest.value.value)]));
}

function lostOf({ losses }: LayoutAnswer, thruster: number): Pairs {
  const pairs: Record<string, number[]> = {};
  for (const { axis, after } of losses[thruster]!.axes) pairs[axis] = [...(pairs[axis] ?? []), after.value];
  return pairs as Pairs;
}

function expectPairs(found: Pairs, expected: Pairs): void {
  expect(Object.keys(found).sort()).toEqual(Object.keys(expected).sort());
  for (const [axis, [up, low]] of Object.entries(expected)) {
    expect(found[axis as Axis]![0], `${axis} positive`).toBeCloseTo(up, 6);
    expect(found[axis as Axis]![1], `${axis} negative`).toBeCloseTo(low, 6);
  }
}

/**
 * Layouts with closed answers, worked by hand; each was also solved with scipy.optimize.linprog(method="highs") and by
 * listing all corners, which agree to 1e-7. Tolerance 1e-6 absolute.
 */
const B_SOUND: Pairs = { surge: [40 * r, -24 * r], sway: both(24 * r), yaw: both(4 * 6 * 0.35 * r) };
const B_LOST: Pairs = { surge: [20 * r, -12 * r], sway: both(12 * r), yaw: both(2 * 6 * 0.35 * r) };
const EIGHT_SOUND: Pairs = { ...B_SOUND, heave: [40, -24], roll: both(4.8), pitch: both(2.88) };
const C_SURGE_FORE = [14.142135624, -8.485281374] as const;
const C_SURGE_AFT = [8.485281374, -14.142135624] as const;
const C_YAW_MORE = [4.949747468, -2.969848481] as const;
const C_YAW_LESS = [2.969848481, -4.949747468] as const;

interface Case {
  readonly name: string;
  readonly request: LayoutRequest;
  readonly sound: Pairs;
  readonly lost: readonly (readonly [number, Pairs])[];
}

const CASES: readonly Case[] = [
  {
    name: "four vectored, alike both ways: surge 4 F r, yaw 4 F 0.35 r",
    request: L.layoutOf(L.VECTORED, 10),
    sound: { surge: both(40 * r), sway: both(40 * r), yaw: both(4 * 10 * 0.35 * r) },
    lost: [0, 1, 2, 3].map((i) => [i, { surge: both(20 * r), sway: both(20 * r), yaw: both(2 * 10 * 0.35 * r) }]),
  },
  {
    name: "four vectored, weaker astern: sway and yaw need equal and opposite pairs",
    request: L.layoutOf(L.VECTORED),
    sound: B_SOUND,
    lost: [0, 1, 2, 3].map((i) => [i, B_LOST]),
  },
  {
    name: "fore pair turned round: 2 F r + 2 R r",
    request: L.layoutOf(L.FORE_TURNED),
    sound: { surge: both(32 * r), sway: both(32 * r), yaw: both(32 * 0.35 * r) },
    lost: [
      [0, { surge: C_SURGE_FORE, sway: C_SURGE_AFT, yaw: C_YAW_LESS }],
      [1, { surge: C_SURGE_FORE, sway: C_SURGE_FORE, yaw: C_YAW_MORE }],
      [2, { surge: C_SURGE_AFT, sway: C_SURGE_AFT, yaw: C_YAW_MORE }],
      [3, { surge: C_SURGE_AFT, sway: C_SURGE_FORE, yaw: C_YAW_LESS }],
    ],
  },
  {
    name: "stern pair and one vertical: yaw 2 x 0.12 x 6",
    request: L.layoutOf(L.STERN_PAIR, 6, {}, (i) => (i === 2 ? L.limited(8, 5) : {})),
    sound: { surge: [20, -12], heave: [8, -5], yaw: both(1.44) },
    lost: [
      [0, { surge: [0, 0], heave: [8, -5], yaw: [0, 0] }],
      [1, { surge: [0, 0], heave: [8, -5], yaw: [0, 0] }],
      [2, { surge: [20, -12], heave: [0, 0], yaw: both(1.44) }],
    ],
  },
  {
    name: "six: four vectored and two verticals abeam",
    request: L.layoutOf(L.SIX),
    sound: { ...B_SOUND, heave: [20, -12], roll: both(1.44) },
    lost: [
      [0, { ...B_LOST, heave: [20, -12], roll: both(1.44) }],
      [4, { ...B_SOUND, heave: [0, 0], roll: [0, 0] }],
    ],
  },
  {
    name: "eight: all six motions",
    request: L.layoutOf(L.EIGHT),
    sound: EIGHT_SOUND,
    lost: [
      [0, { ...EIGHT_SOUND, ...B_LOST }],
      [4, { ...EIGHT_SOUND, heave: [20, -12], roll: both(2.4), pitch: both(1.44) }],
    ],
  },
  {
    name: "thrust below the centre: trim of 0.3 x 5 N m is all that holds surge, 30 N",
    request: L.layoutOf(L.LOW_THRUST, 6, { axes: ["surge", "heave", "pitch", "yaw"] }, (i) =>
      i > 3 ? L.limited(8, 5) : {},
    ),
    sound: { surge: [30, -20.784609691], heave: [16, -10], pitch: both(1.5), yaw: both(5.517691454) },
    lost: [
      [
        0,
        { surge: [17.320508076, -10.392304845], heave: [16, -10], pitch: both(1.5), yaw: [2.758845727, -4.598076211] },
      ],
      [4, { surge: [0, 0], heave: [0, 0], pitch: [0, 0], yaw: both(5.517691454) }],
    ],
  },
  {
    name: "three round a circle along the tangent",
    request: L.layoutOf(L.RING),
    sound: { surge: both(12 * Math.sin(Math.PI / 3)), sway: [15, -9], yaw: [6, -3.6] },
    lost: [[0, { surge: both(12 * Math.sin(Math.PI / 3)), sway: [0, 0], yaw: [0, 0] }]],
  },
];

describe.each(CASES)("$name", ({ request, sound, lost }) => {
  const answer = layoutAnswer(request);

  test("the greatest of each axis with the others held", () => {
    expectPairs(soundOf(answer), sound);
    expect(answer.converged).toBe(true);
  });

  test.each(lost)("thruster %i lost", (thruster, expected) => expectPairs(lostOf(answer, thruster), expected));
});

const ALL = ["surge", "sway", "heave", "roll", "pitch", "yaw"] as const;
const inPairs = (numbers: readonly number[]): Pairs =>
  Object.fromEntries(ALL.map((axis, k) => [axis, [numbers[2 * k]!, numbers[2 * k + 1]!]]));
const limitedOf = ({ reach }: LayoutAnswer): Pairs =>
  Object.fromEntries(reach.map(({ axis, ways }) => [axis, ways.map((one) => one.withBusLimit!.value.value)]));

/**
 * scipy 1.17.1: linprog(c, A_ub, b_ub, A_eq, b_eq, bounds, method="highs") with thrusts and currents as unknowns, each
 * current at least every line of its table (the epigraph, not pieces as in the program), their sum at most the bus.
 */
describe("within the current of the bus", () => {
  test("eight thrusters of one table at 20 A", () => {
    const current = {
      forward: [
        { thrust: 4, current: 1.5 },
        { thrust: 8, current: 4.5 },
        { thrust: 10, current: 7 },
      ],
      reverse: [
        { thrust: 3, current: 1.5 },
        { thrust: 6, current: 5 },
      ],
    };
    const answer = layoutAnswer(L.layoutOf(L.EIGHT, 6, { busCurrentLimit: 20 }, () => ({ current })));
    expectPairs(
      limitedOf(answer),
      inPairs([
        23.758787847868, -16.970562748477, 16.970562748477, -16.970562748477, 33.6, -24, 4.8, -4.8, 2.88, -2.88,
        5.939696961967, -5.939696961967,
      ]),
    );
  });

  test("seven unlike thrusters at 12 A of which 3 A are the hotel's", () => {
    const current = (i: number) => ({
      forward: [1, 2].map((k) => ({ thrust: (L.UNLIKE_LIMITS.forward[i]! * k) / 2, current: [2, 7][k - 1]! })),
      reverse: [1, 2].map((k) => ({ thrust: (L.UNLIKE_LIMITS.reverse[i]! * k) / 2, current: [2.2, 6][k - 1]! })),
    });
    const answer = layoutAnswer(L.unlike({ busCurrentLimit: 12, hotelCurrent: 3 }, (i) => ({ current: current(i) })));
    expectPairs(soundOf(answer), inPairs(UNLIKE_SOUND));
    expectPairs(
      limitedOf(answer),
      inPairs([
        15.947037389331, -9.7347283084, 7.530159351455, -7.04753583462, 14.324947194221, -9.044158581931,
        1.806301096607, -1.611451086568, 1.819694103134, -2.128312354669, 4.071751787519, -3.714948417334,
      ]),
    );
    for (const { ways } of answer.reach)
      for (const { withBusLimit } of ways) expect(withBusLimit!.current!.value).toBeLessThanOrEqual(12 + 1e-6);
  });

  test("the doubt of a force within the bus is that of the current, by the power 2/3", () => {
    // F ∝ (I/I1)^(2/3) as below, so u(F)/F = 2/3 u(I1)/I1: JCGM 100:2008, eq. 12; by hand.
    const current = { forward: [{ thrust: 10, current: 6 }], reverse: [{ thrust: 6, current: 5 }] };
    const doubt = { currentUncertainty: { forward: 0.06, reverse: 0.06 }, drive: "one" };
    const answer = layoutAnswer(L.layoutOf(L.VECTORED, 6, { busCurrentLimit: 9 }, () => ({ current, ...doubt })));
    const { value, standardUncertainty, interval95 } = answer.reach[0]!.ways[0]!.withBusLimit!.value;
    // The straight pieces that stand for the power law have slopes some percent off its own.
    expect(standardUncertainty / value).toSatisfy(relative((2 / 3) * 0.06, 0.08));
    expect(interval95[1] - value).toSatisfy(relative(1.96 * standardUncertainty, 1e-3));
    expect(answer.reach[0]!.ways[0]!.greatest.value.standardUncertainty).toBe(0);
  });

  test("current that grows with thrust to the power 1.5 follows the closed form within 0.3 %", () => {
    // By hand: four alike at f each draw 4 I1 (f/T1)^1.5, so f = T1 (I/(4 I1))^(2/3) and surge is 4 r f.
    const current = { forward: [{ thrust: 10, current: 6 }], reverse: [{ thrust: 6, current: 5 }] };
    const answer = layoutAnswer(L.layoutOf(L.VECTORED, 6, { busCurrentLimit: 9 }, () => ({ current })));
    const expected = 4 * r * 10 * (9 / 24) ** (2 / 3);
    const found = limitedOf(answer).surge![0];
    expect(found).toBeLessThanOrEqual(expected * (1 + 1e-9));
    expect(found).toBeGreaterThan(expected * 0.997);
  });
});

const UNLIKE_SOUND = [
  33.493247725797, -19.759355724041, 12.68300294304, -12.015478081411, 21.186555894299, -13.238668041543, 2.12599711871,
  -1.745771691878, 2.781666927786, -2.65927743172, 7.379136868115, -6.396142119532,
];

/**
 * Torque ahead and astern differ, so the set is no box any more. scipy 1.17.1 linprog over each of the 2^7 choices of
 * side of every thruster, the best taken.
 */
test("the torque of the propellers is held where it counts, and no thruster pushes both ways at once", () => {
  const kappa = (i: number) =>
    i === 2 || i === 3 || i === 6 ? { forward: 0.02, reverse: 0.015 } : { forward: 0.012, reverse: 0.016 };
  const request = L.unlike({ countReactionTorque: true }, (i) => ({
    torquePerThrust: kappa(i),
    spin: i % 2 === 0 ? "clockwise" : "anticlockwise",
  }));
  expectPairs(
    soundOf(layoutAnswer(request)),
    inPairs([
      33.31142576352, -19.678531199374, 12.662329524419, -12.012693881914, 21.780413311434, -13.363249690987,
      2.250265746807, -1.629175026901, 2.56265667616, -2.830319573641, 7.476837186219, -6.439332115441,
    ]),
  );
});

test("the matrix for a control system and the singular values are those of numpy", () => {
  // numpy 2.4.6: linalg.pinv(B), linalg.svd(B / [1, 1, 1, L, L, L]); first row and all singular values for L = 1.
  const { pseudoInverse, singularValues, momentLength, matrix } = layoutAnswer(L.unlike());
  const row = [
    0.286042016476647, -0.463491449523037, 0.022823441746828, -0.197408153222658, 0.04782924162073, -0.792485338644752,
  ];
  row.forEach((one, k) => {
    expect(pseudoInverse[0]![k]).toBeCloseTo(one, 10);
  });
  // The sum of squares of the singular values is that of all numbers of the matrix they belong to (Frobenius norm).
  const squares = matrix.flatMap((line, k) => line.map((one) => (k < 3 ? one : one / momentLength) ** 2));
  const total = singularValues.reduce((sum, one) => sum + one * one, 0);
  expect(total).toBeCloseTo(
    squares.reduce((sum, one) => sum + one, 0),
    10,
  );
});

describe("outlines of force", () => {
  const horizontal = (answer: LayoutAnswer) => answer.outlines[0]!.corners;

  test("four vectored, alike both ways, make a square that stands on its corner", () => {
    // By hand: no yaw asks a + c = b + d = s; X = 2 r s, |Y| <= r (40 - 2 |s|), so |X| + |Y| <= 40 r.
    const corners = horizontal(layoutAnswer(L.layoutOf(L.VECTORED, 10)));
    expect(corners).toHaveLength(4);
    for (const [x, y] of corners) {
      expect(Math.abs(x) + Math.abs(y)).toBeCloseTo(40 * r, 8);
      expect(Math.min(Math.abs(x), Math.abs(y))).toBeCloseTo(0, 8);
    }
  });

  test("what can only push along one line has a line, and one motion less a point", () => {
    const { outlines } = layoutAnswer(L.layoutOf(L.STERN_PAIR));
    expect(outlines[0]!.corners.map(([x, y]) => [x, y]).sort((a, b) => a[0]! - b[0]!)).toEqual([
      [expect.closeTo(-12, 9), 0],
      [expect.closeTo(20, 9), 0],
    ]);
    expect(layoutAnswer(L.layoutOf(L.STERN_PAIR.slice(0, 2))).outlines[2]!.corners).toEqual([[0, 0]]);
  });

  test("seven unlike thrusters reach as far in twelve directions as scipy finds", () => {
    // scipy 1.17.1 linprog: greatest cos q X + sin q Y, q = 0, 30 ... 330 degrees, heave and all moments zero.
    const expected = [
      33.501793892, 29.266980151, 17.320581844, 15.276597391, 11.042529563, 17.587038187, 19.767509742, 17.361105621,
      10.433036884, 15.227120393, 17.867044103, 29.456921106,
    ];
    const corners = horizontal(layoutAnswer(L.unlike()));
    expected.forEach((far, k) => {
      const q = (k * Math.PI) / 6;
      expect(Math.max(...corners.map(([x, y]) => Math.cos(q) * x + Math.sin(q) * y))).toBeCloseTo(far, 7);
    });
  });
});
