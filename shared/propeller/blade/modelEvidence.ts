import type { EvidencePoint, ModelEvidence } from "../../model/bladeElements.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import { bladeReynolds } from "../coefficients.ts";
import { solvedBlade } from "./bladeElements.ts";
import { bladeShape } from "./bladeShape.ts";
import {
  LARGE_ADVANCING,
  LARGE_RESEARCH_PROPELLER,
  LARGE_STATIC,
  RESEARCH_AIR,
  SMALL_RESEARCH_PROPELLER,
  SMALL_STATIC,
} from "./researchPropellers.data.ts";

const SMOOTH = { roughness: 0, liftFactor: 1, dragFactor: 1 };

interface Measured {
  readonly rpm: number;
  readonly advanceRatio: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

/**
 * What blade elements with the section model make of the measured research propellers, point by point. The numbers of the
 * model were chosen on the large one; the small one was held back, so it is the honest test.
 *
 * Source   `researchPropellers.data.ts`.
 */
export function modelEvidence(): ModelEvidence {
  const atRest = ([rpm, thrustCoefficient, powerCoefficient]: readonly [number, number, number]): Measured => ({
    rpm,
    advanceRatio: 0,
    thrustCoefficient,
    powerCoefficient,
  });
  return {
    chosenOn: [
      ...compared(LARGE_RESEARCH_PROPELLER, LARGE_STATIC.map(atRest)),
      ...compared(
        LARGE_RESEARCH_PROPELLER,
        LARGE_ADVANCING.map(([rpm, J, C_T, C_P]) => ({
          rpm,
          advanceRatio: J,
          thrustCoefficient: C_T,
          powerCoefficient: C_P,
        })),
      ),
    ],
    heldBack: compared(SMALL_RESEARCH_PROPELLER, SMALL_STATIC.map(atRest)),
  };
}

function compared(geometry: BladeGeometry, points: readonly Measured[]): EvidencePoint[] {
  const shape = bladeShape(geometry);
  const chord = geometry.stations.find(({ radius }) => radius >= 0.37 * geometry.diameter)!.chord;
  return points.flatMap((measured) => {
    const rotationRate = measured.rpm / 60;
    const advanceSpeed = measured.advanceRatio * rotationRate * geometry.diameter;
    const solved = solvedBlade(shape, { surface: SMOOTH, fluid: RESEARCH_AIR, rotationRate, advanceSpeed });
    if (solved.state === "failed") return [];
    const flow = { chord, radius: 0.75, diameter: geometry.diameter, rotationRate, advanceSpeed };
    return [
      {
        diameter: geometry.diameter,
        rotationRate,
        reynolds: bladeReynolds({ ...flow, kinematicViscosity: RESEARCH_AIR.kinematicViscosity }),
        advanceRatio: measured.advanceRatio,
        measured: {
          thrustCoefficient: measured.thrustCoefficient,
          torqueCoefficient: measured.powerCoefficient / (2 * Math.PI),
        },
        computed: {
          thrustCoefficient: solved.thrustCoefficient,
          torqueCoefficient: solved.torqueCoefficient,
        },
      },
    ];
  });
}
