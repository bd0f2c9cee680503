import { type LayoutInput, LayoutRequest, type ThrusterPlacement } from "../../shared/model/vehicle/layoutRequest.ts";

/** Forward, as a direction. */
export const ahead = [1, 0, 0] as const;
export const at = (x: number, y: number, z = 0) => [x, y, z] as const;

export const codesOf = ({ warnings }: { readonly warnings: readonly { readonly code: string }[] }) =>
  warnings.map(({ code }) => code);

type Triple = readonly [number, number, number];
type Placed = readonly [position: Triple, direction: Triple];
type More = Partial<Omit<LayoutInput, "thrusters">>;
type Each = (i: number) => Partial<LayoutInput["thrusters"][number]>;

const r = Math.SQRT1_2;
const turn = (degrees: number): Placed => {
  const q = (degrees * Math.PI) / 180;
  return [
    [0.2 * Math.cos(q), 0.2 * Math.sin(q), 0],
    [-Math.sin(q), Math.cos(q), 0],
  ];
};

export const VECTORED: readonly Placed[] = [
  [
    [0.2, 0.15, 0],
    [r, -r, 0],
  ],
  [
    [0.2, -0.15, 0],
    [r, r, 0],
  ],
  [
    [-0.2, 0.15, 0],
    [r, r, 0],
  ],
  [
    [-0.2, -0.15, 0],
    [r, -r, 0],
  ],
];
export const FORE_TURNED: readonly Placed[] = [
  [VECTORED[0]![0], [-r, r, 0]],
  [VECTORED[1]![0], [-r, -r, 0]],
  VECTORED[2]!,
  VECTORED[3]!,
];
const down = (x: number, y: number, z = 0): Placed => [
  [x, y, z],
  [0, 0, 1],
];
export const STERN_PAIR: readonly Placed[] = [
  [
    [-0.2, -0.12, 0],
    [1, 0, 0],
  ],
  [
    [-0.2, 0.12, 0],
    [1, 0, 0],
  ],
  down(0, 0, -0.05),
];
export const SIX: readonly Placed[] = [...VECTORED, down(0, 0.12), down(0, -0.12)];
export const EIGHT: readonly Placed[] = [
  ...VECTORED,
  down(0.12, 0.2),
  down(0.12, -0.2),
  down(-0.12, 0.2),
  down(-0.12, -0.2),
];
const [c, s] = [Math.cos(Math.PI / 6), 0.5];
export const LOW_THRUST: readonly Placed[] = [
  [
    [0.2, 0.15, 0.05],
    [c, -s, 0],
  ],
  [
    [0.2, -0.15, 0.05],
    [c, s, 0],
  ],
  [
    [-0.2, 0.15, 0.05],
    [c, s, 0],
  ],
  [
    [-0.2, -0.15, 0.05],
    [c, -s, 0],
  ],
  down(0.15, 0),
  down(-0.15, 0),
];
export const RING: readonly Placed[] = [turn(0), turn(120), turn(240)];

/** Seven thrusters no two of which are alike, about a centre of mass off the origin. */
export const UNLIKE: readonly Placed[] = [
  [
    [0.31, 0.14, 0.02],
    [1, -0.6, 0.1],
  ],
  [
    [0.28, -0.17, 0.03],
    [1, 0.7, 0],
  ],
  [
    [-0.3, 0.16, 0.01],
    [1, 0.5, -0.1],
  ],
  [
    [-0.33, -0.13, 0.02],
    [1, -0.55, 0],
  ],
  [
    [0.1, 0.22, -0.04],
    [0.1, 0, 1],
  ],
  [
    [0.12, -0.2, -0.03],
    [0, 0.1, 1],
  ],
  [
    [-0.2, 0.01, -0.05],
    [0, 0, 1],
  ],
];
export const UNLIKE_LIMITS = {
  forward: [10, 9, 11, 10.5, 7, 8, 12],
  reverse: [6, 5, 7, 6.5, 4, 5, 8],
  centreOfMass: { x: 0.01, y: -0.005, z: 0.03 },
};

const point = ([x, y, z]: Triple) => ({ x, y, z });

/** A request for thrusters at these places; `each` may change any thruster, `more` the request. */
export function layoutOf(
  placed: readonly Placed[],
  reverse = 6,
  more: More = {},
  each: Each = () => ({}),
): LayoutRequest {
  return LayoutRequest.parse({
    thrusters: placed.map(([position, direction], i) => ({
      name: `T${i + 1}`,
      position: point(position),
      direction: point(direction),
      limits: { forward: { value: 10 }, reverse: { value: reverse } },
      ...each(i),
    })),
    ...more,
  } satisfies LayoutInput);
}

export const limited = (forward: number, reverse: number): Pick<ThrusterPlacement, "limits"> => ({
  limits: {
    forward: { value: forward, standardUncertainty: 0 },
    reverse: { value: reverse, standardUncertainty: 0 },
  },
});

export const unlike = (more: More = {}, each: Each = () => ({})) =>
  layoutOf(UNLIKE, 6, { centreOfMass: UNLIKE_LIMITS.centreOfMass, ...more }, (i) => ({
    ...limited(UNLIKE_LIMITS.forward[i]!, UNLIKE_LIMITS.reverse[i]!),
    ...each(i),
  }));
