import type { PlacedThruster } from "../../../../shared/model/vehicle/vehicle.ts";

/** Outer sizes of a vehicle, m. */
export interface BodySize {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

type Placed = Omit<PlacedThruster, "drive">;
type Triple = readonly [number, number, number];

export interface StartingLayout {
  readonly id: string;
  readonly label: string;
  /** What it can do and what it can not. */
  readonly about: string;
  readonly thrusters: (size: BodySize) => Placed[];
}

/** Thrusters sit inside the body: these parts of its length and width from the middle. Common practice, no source. */
const ALONG = 0.35;
const ASIDE = 0.4;
const UPRIGHT_ASIDE = 0.3;
const ABOVE = 0.15;
const HALF = Math.SQRT1_2;
const FLAT_TURN = (2 * Math.PI) / 3;

function placed(name: string, [x, y, z]: Triple, [dx, dy, dz]: Triple, spin: PlacedThruster["spin"]): Placed {
  return { name, position: { x, y, z }, direction: { x: dx, y: dy, z: dz }, spin };
}

/** Four in the corners, turned 45° inwards; neighbours turn against each other, so that their torques cancel ahead. */
function corners({ length, width }: BodySize): Placed[] {
  const [x, y] = [ALONG * length, ASIDE * width];
  return [
    placed("Fore starboard", [x, y, 0], [HALF, -HALF, 0], "clockwise"),
    placed("Fore port", [x, -y, 0], [HALF, HALF, 0], "anticlockwise"),
    placed("Aft starboard", [-x, y, 0], [HALF, HALF, 0], "anticlockwise"),
    placed("Aft port", [-x, -y, 0], [HALF, -HALF, 0], "clockwise"),
  ];
}

const upright = (name: string, x: number, y: number, size: BodySize, spin: PlacedThruster["spin"]) =>
  placed(name, [x, y, -ABOVE * size.height], [0, 0, 1], spin);

function uprightPair(size: BodySize): Placed[] {
  const y = UPRIGHT_ASIDE * size.width;
  return [upright("Upright starboard", 0, y, size, "clockwise"), upright("Upright port", 0, -y, size, "anticlockwise")];
}

function sternPair({ length, width }: BodySize): Placed[] {
  const [x, y] = [-ALONG * length, ASIDE * width];
  return [
    placed("Starboard", [x, y, 0], [1, 0, 0], "clockwise"),
    placed("Port", [x, -y, 0], [1, 0, 0], "anticlockwise"),
  ];
}

/** Layouts of the trade to begin with; every place can be changed. */
export const STARTING_LAYOUTS: readonly StartingLayout[] = [
  {
    id: "cornersAndPair",
    label: "Four at 45° and two upright",
    about: "Ahead, sideways, up and turning, and roll. Pitch is left to the righting of the body.",
    thrusters: (size) => [...corners(size), ...uprightPair(size)],
  },
  {
    id: "cornersAndFour",
    label: "Four at 45° and four upright",
    about: "Every motion, roll and pitch too, with a thruster to spare.",
    thrusters: (size) => {
      const [x, y] = [0.6 * ALONG * size.length, ASIDE * size.width];
      return [
        ...corners(size),
        upright("Upright fore starboard", x, y, size, "clockwise"),
        upright("Upright fore port", x, -y, size, "anticlockwise"),
        upright("Upright aft starboard", -x, y, size, "anticlockwise"),
        upright("Upright aft port", -x, -y, size, "clockwise"),
      ];
    },
  },
  {
    id: "pairAndOne",
    label: "Two ahead and one upright",
    about: "Ahead, up and turning; sideways it can only drift. The fewest parts.",
    thrusters: (size) => [...sternPair(size), upright("Upright", 0, 0, size, "clockwise")],
  },
  {
    id: "pairUprightAcross",
    label: "Two ahead, one upright, one across",
    about: "Ahead, sideways, up and turning with four thrusters.",
    thrusters: (size) => [
      ...sternPair(size),
      upright("Upright", 0, 0, size, "clockwise"),
      placed("Across", [0, 0, 0], [0, 1, 0], "clockwise"),
    ],
  },
  {
    id: "ring",
    label: "Three in a ring, level",
    about: "Ahead, sideways and turning; depth by buoyancy alone.",
    thrusters: ({ length, width }) =>
      [0, 1, 2].map((n) => {
        const at = n * FLAT_TURN;
        const radius = ASIDE * Math.min(length, width);
        const place: Triple = [radius * Math.cos(at), radius * Math.sin(at), 0];
        return placed(`Ring ${n + 1}`, place, [0 - Math.sin(at), Math.cos(at), 0], "clockwise");
      }),
  },
];

/** What a small inspection vehicle measures; for the picture alone, until sizes are typed. */
export const USUAL_SIZE: BodySize = { length: 0.45, width: 0.35, height: 0.25 };
