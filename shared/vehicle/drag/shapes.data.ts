/**
 * Drag coefficients of simple shapes on their frontal area, at Reynolds numbers where they hardly change.
 *
 * Sources: Hoerner, Fluid-Dynamic Drag (1965), ch. 3; White, Fluid Mechanics, tables 7.2 (long shapes) and 7.3 (bodies);
 * both from memory. Books differ by 5 to 10 %: the relative uncertainties and the ranges of Reynolds numbers are
 * common practice, no source, unless said. Where two books differ the one named is used.
 */
export interface ShapeCoefficient {
  /** [size ratio, C_D], ratios rising; one entry where there is no ratio. */
  readonly table: readonly (readonly [number, number])[];
  /** Relative standard uncertainty. */
  readonly relativeUncertainty: number;
  readonly reynoldsRange: readonly [number, number];
  /** What is known to happen above the range; empty where nothing is. */
  readonly above: string;
  readonly source: string;
}

const HOERNER = "Hoerner, Fluid-Dynamic Drag (1965), ch. 3 (from memory)";
const WHITE_BODIES = "White, Fluid Mechanics, table 7.3 (from memory)";
const WHITE_LONG = "White, Fluid Mechanics, table 7.2 (from memory)";

/** Edges fix where the flow leaves the body, so that its speed hardly matters. */
const SHARP = { relativeUncertainty: 0.05, reynoldsRange: [1e4, 1e7], above: "" } as const;
/** A laminar boundary layer leaves early; from about 3e5 on it turns turbulent first. */
const SMOOTH = { relativeUncertainty: 0.1, reynoldsRange: [1e4, 2e5] } as const;
const CRISIS = "the boundary layer turns turbulent (drag crisis) and the coefficient may fall to";

const one = (coefficient: number) => [[1, coefficient]] as const;

export const SHAPE_COEFFICIENTS = {
  sphere: { ...SMOOTH, table: one(0.47), above: `${CRISIS} 0.1 to 0.2`, source: HOERNER },
  hemisphere: { ...SMOOTH, table: one(0.42), above: `${CRISIS} 0.2 or less`, source: HOERNER },
  cupUpstream: { ...SHARP, table: one(1.42), source: HOERNER },
  cupDownstream: { ...SMOOTH, table: one(0.38), above: `${CRISIS} 0.2 or less`, source: HOERNER },
  disc: { ...SHARP, table: one(1.17), source: `${HOERNER}; ${WHITE_BODIES}` },
  /** Over short side / long side: 0 is a plate without ends. */
  plate: {
    ...SHARP,
    table: [
      [0, 2.0],
      [1 / 20, 1.5],
      [1 / 10, 1.3],
      [1 / 5, 1.2],
      [1, 1.18],
    ],
    source: WHITE_BODIES,
  },
  cubeFace: { ...SHARP, table: one(1.05), source: HOERNER },
  cubeEdge: { ...SHARP, table: one(0.8), source: HOERNER },
  cone: { ...SHARP, table: one(0.5), source: HOERNER },
  /** Over length / diameter; at 0 a disc. */
  axialCylinder: {
    ...SHARP,
    table: [
      [0, 1.17],
      [0.5, 1.15],
      [1, 0.9],
      [2, 0.85],
      [4, 0.87],
      [8, 0.99],
    ],
    source: WHITE_BODIES,
  },
  /** Over length / diameter. 0.2 to 0.3: the middle, with the standard uncertainty of an even spread over 0.1. */
  roundedCylinder: {
    table: [
      [2, 0.25],
      [5, 0.25],
    ],
    relativeUncertainty: 0.12,
    reynoldsRange: [1e4, 1e7],
    above: "",
    source: "common practice, no source",
  },
  /** Over diameter / length: 0 is a cylinder without ends. */
  crossCylinder: {
    ...SMOOTH,
    table: [
      [0, 1.2],
      [1 / 40, 0.98],
      [1 / 20, 0.91],
      [1 / 10, 0.82],
      [1 / 5, 0.74],
      [1 / 3, 0.74],
      [1 / 2, 0.68],
      [1, 0.64],
    ],
    above: `${CRISIS} a quarter`,
    source: WHITE_BODIES,
  },
  squareBarFace: { ...SHARP, table: one(2.1), source: WHITE_LONG },
  squareBarEdge: { ...SHARP, table: one(1.6), source: WHITE_LONG },
  /** Over length / diameter. */
  ellipsoidLaminar: {
    ...SMOOTH,
    relativeUncertainty: 0.15,
    table: [
      [1, 0.47],
      [2, 0.27],
      [4, 0.25],
      [8, 0.2],
    ],
    above: "the boundary layer turns turbulent: take the turbulent ellipsoid",
    source: WHITE_BODIES,
  },
  ellipsoidTurbulent: {
    table: [
      [1, 0.2],
      [2, 0.13],
      [4, 0.1],
      [8, 0.08],
    ],
    relativeUncertainty: 0.15,
    reynoldsRange: [3e5, 1e7],
    above: "",
    source: WHITE_BODIES,
  },
} as const satisfies Readonly<Record<string, ShapeCoefficient>>;

/** Friction line and form factor of a streamlined body: how far such estimates lie from tests. Common practice, no source. */
export const STREAMLINED = {
  relativeUncertainty: 0.15,
  reynoldsRange: [5e5, 1e9],
  above: "",
  source: "ITTC-57 line; form factor Hoerner, Fluid-Dynamic Drag (1965), ch. 6 (from memory)",
} as const;
