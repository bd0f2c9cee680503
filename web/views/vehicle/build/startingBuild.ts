import type { DirectionDrag, VehicleDrag } from "../../../../shared/model/vehicle/drag.ts";
import { VehicleBuild, type VehicleBuildInput } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { asternEstimate } from "../../drive/asternShare.ts";
import { type BodySize, STARTING_LAYOUTS } from "./startingLayouts.ts";

export interface Start {
  readonly name: string;
  /** Id of a starting layout. */
  readonly layout: string;
  readonly size: BodySize;
  /** With the water it encloses, kg. */
  readonly mass: number;
  readonly motorId: string;
  readonly controllerId?: string | undefined;
  readonly packId: string;
  /** Name of a propeller whose coefficients are known. */
  readonly propeller: string;
}

/** The one kind of thruster that a new vehicle has. */
const FIRST_DRIVE = "Thruster";
/** An open frame with a hull and tubes in it: between a cube and a plate. Common practice, no source. */
const FRAME = {
  dragCoefficient: 1,
  relativeUncertainty: 0.25,
  source: "between a cube and a flat plate; a first guess",
};
/** Share of the coefficients ahead that a propeller made for ahead keeps astern. Common practice, no source. */
const ASTERN_SHARE = 0.6;
/** Mass of a body whose water was not weighed, relative. Common practice, no source. */
const MASS_DOUBT = 0.03;
const STARTING_SPEED = 1;

const percent = (share: number) => `${Math.round(100 * share)}\u202f%`;

/** What `startingBuild` takes though nobody stated it. */
export const TAKEN_AT_FIRST: readonly string[] = [
  `Drag: a box of that size with a drag coefficient of ${FRAME.dragCoefficient}, give or take ${percent(FRAME.relativeUncertainty)}; added mass: a spheroid as long and thick.`,
  `Astern the propeller keeps ${percent(ASTERN_SHARE)} of its thrust coefficient ahead.`,
  `Mass: give or take ${percent(MASS_DOUBT)}. Trim: neither sinks nor floats. Hotel load: none. Tether and mission: none.`,
  "Wake and thrust deduction: those of thrusters that stand clear of the hull.",
];

/** A vehicle to begin with: one kind of thruster, the drag of a box of its size, added mass of a body as long and wide. */
export function startingBuild(start: Start): VehicleBuild {
  const layout = STARTING_LAYOUTS.find(({ id }) => id === start.layout) ?? STARTING_LAYOUTS[0]!;
  return VehicleBuild.parse({
    name: start.name,
    mass: { value: start.mass, standardUncertainty: MASS_DOUBT * start.mass },
    drag: boxDrag(start.size),
    drives: [
      {
        name: FIRST_DRIVE,
        motorId: start.motorId,
        ...(start.controllerId !== undefined && { controllerId: start.controllerId }),
        propeller: { from: "named", name: start.propeller },
        asternEstimate: asternEstimate(ASTERN_SHARE),
      },
    ],
    thrusters: layout.thrusters(start.size).map((one) => ({ ...one, drive: FIRST_DRIVE })),
    supply: { packId: start.packId },
  } satisfies VehicleBuildInput);
}

function boxDrag({ length, width, height }: BodySize): VehicleDrag {
  const face = (area: number): DirectionDrag => ({
    drag: {
      from: "shapes",
      speed: STARTING_SPEED,
      interferenceUncertainty: 0.15,
      items: [
        {
          ...{ kind: "stated", name: "Body as a box", area, count: 1, exposedShare: 1, interferenceFactor: 1 },
          ...FRAME,
        },
      ],
    },
  });
  const body = { from: "spheroid", relativeUncertainty: 0.2 } as const;
  // A spheroid is no thicker than it is long.
  const thick = (diameter: number) => Math.min(length, diameter);
  return {
    surge: {
      forward: face(width * height),
      addedMass: { ...body, length, diameter: thick(Math.sqrt(width * height)), motion: "axial" },
    },
    sway: {
      sideways: face(length * height),
      addedMass: { ...body, length, diameter: thick(height), motion: "lateral" },
    },
    heave: { down: face(length * width), addedMass: { ...body, length, diameter: thick(width), motion: "lateral" } },
  };
}
