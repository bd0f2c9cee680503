import type { BladeElement, BladeElementsResult, BladeElementsSolved } from "../../model/bladeElements.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { SectionPolar } from "../../model/sectionPolar.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { finite, positive } from "../../quantity/domain.ts";
import { finiteResult } from "../../quantity/finiteResult.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { checkedPolar } from "../section/checkedPolar.ts";
import { type PolarTables, polarTables } from "../section/polarTables.ts";
import { type BladeShape, bladeShape } from "./bladeShape.ts";
import { bladeWarnings } from "./bladeWarnings.ts";
import { checkedGeometry } from "./checkedGeometry.ts";
import { type BladeRun, elementOf, type Flow } from "./pieceInFlow.ts";
import { PowerAccount } from "./powerAccount.ts";
import { RingSearch } from "./ringSearch.ts";

/** The flow a blade is run in. */
export interface BladeRunning {
  readonly surface: BladeSurface;
  readonly fluid: FluidProperties;
  /** Rotation rate, rev/s; negative turns the propeller against its design direction. */
  readonly rotationRate: number;
  /** Speed through the water, m/s; negative is astern. */
  readonly advanceSpeed: number;
}

export interface BladeElementsRequest extends BladeRunning {
  readonly geometry: BladeGeometry;
  /** Measured lift and drag of the sections, instead of the section model. */
  readonly polars?: SectionPolar;
}

/**
 * Thrust, torque and losses of a propeller from the shape of its blades: blade-element momentum, ring by ring.
 *
 * Any advance speed and both directions of turning; at rest, windmilling and astern. `RingSearch` says how a ring is
 * solved and why it can not fail for a section with drag; where it does all the same, the reason and the place come back.
 *
 * Source   as `RingSearch`; section model as `attachedFlow`.
 * Assumes  steady, no nozzle, no cavitation, each ring alone; the stream does not contract and the blade does not bend.
 *          The Reynolds number of a section is that of the onset flow, without the induced velocity.
 * Range    a geometry `checkedGeometry` passes; rotation rate not 0.
 * Error    slender blades, Re 2e4 to 7e4: thrust and power 6 % at rest, efficiency 0.02 advancing (the measured research
 *          propellers of `modelEvidence`). Broad blades (Wageningen B series) at rest: `broadBlades.data.ts`, thrust -9 to
 *          26 %, torque 20 % high at low pitch to 30 % low at pitch ratio 1.4; near zero thrust both 10 to 50 % high. More
 *          again for rough or thick printed blades.
 * Throws   InputProblem as `checkedGeometry` and `checkedPolar`; OutOfDomain for a speed that is not finite or a rotation
 *          rate of 0.
 */
export function bladeElements({ geometry, polars, ...running }: BladeElementsRequest): BladeElementsResult {
  const { shape, tables } = prepared(geometry, polars);
  return finiteResult(solvedBlade(shape, running, tables));
}

export interface BladeElementsSweep extends Omit<BladeElementsRequest, "rotationRate" | "advanceSpeed"> {
  /** Rotation rate, rev/s, and advance speed, m/s, of each flow. */
  readonly points: readonly Pick<BladeRunning, "rotationRate" | "advanceSpeed">[];
}

/** As `bladeElements`, in several flows. */
export function bladeElementsSweep({ geometry, polars, points, ...common }: BladeElementsSweep): BladeElementsResult[] {
  const { shape, tables } = prepared(geometry, polars);
  points.forEach(({ rotationRate }, i) => {
    requireTurning(rotationRate, `points[${i}].rotationRate`);
  });
  return finiteResult(points.map((point) => solvedBlade(shape, { ...common, ...point }, tables)));
}

function prepared(geometry: BladeGeometry, polars: SectionPolar | undefined) {
  const shape = bladeShape(checkedGeometry(geometry));
  return { shape, tables: polars && polarTables(checkedPolar(polars), shape.aspectRatio) };
}

function requireTurning(rotationRate: number, where: string): void {
  if (rotationRate !== 0) return;
  throw new OutOfDomain({
    code: "propeller.not-turning",
    where,
    found: "rotation rate is 0 rev/s",
    needed: "a propeller that turns, either way",
    mend: "Give a rotation rate; a stopped propeller has no coefficients",
  });
}

/** As `bladeElements`, for a blade that is run in many flows. */
export function solvedBlade(shape: BladeShape, running: BladeRunning, polars?: PolarTables): BladeElementsResult {
  const flow = checkedFlow(running);
  const account = new PowerAccount(shape, flow.V);
  const run = { shape, flow, polars, account, search: new RingSearch() };
  const elements: BladeElement[] = [];
  for (const piece of shape.pieces) {
    const element = elementOf(piece, run);
    if (typeof element === "string") return { state: "failed", reason: element, radius: piece.radius };
    elements.push(element);
  }
  return solution(run, elements);
}

function checkedFlow({ surface, fluid, rotationRate, advanceSpeed }: BladeRunning): Flow {
  const n = finite(rotationRate, "rotation rate", "rev/s");
  requireTurning(n, "rotationRate");
  return {
    surface,
    rho: positive(fluid.density, "density", "kg/m³"),
    nu: positive(fluid.kinematicViscosity, "kinematic viscosity", "m²/s"),
    n,
    omega: 2 * Math.PI * n,
    V: finite(advanceSpeed, "advance speed", "m/s"),
  };
}

function solution({ shape, flow, polars, account }: BladeRun, elements: BladeElement[]): BladeElementsSolved {
  const { n, omega, V, rho, surface } = flow;
  const { bladeCount: B, diameter: D } = shape;
  let [thrust, torque] = [0, 0];
  for (const { width, radius, thrustPerLength, tangentialForcePerLength } of elements) {
    thrust += B * thrustPerLength * width;
    torque += B * tangentialForcePerLength * radius * width;
  }
  const power = account.closed({ thrust, shaft: omega * torque, density: rho });
  return {
    state: "solved",
    thrust,
    torque,
    thrustCoefficient: thrust / (rho * n * n * D ** 4),
    torqueCoefficient: torque / (rho * n * n * D ** 5),
    advanceRatio: V / (n * D),
    efficiency: power.shaft > 0 ? power.useful / power.shaft : null,
    elements,
    power,
    warnings: [
      ...shape.warnings,
      ...bladeWarnings(shape, elements, { advanceSpeed: V, roughness: surface.roughness, polars }),
    ],
  };
}
