import { fluidProperties } from "../../fluid/fluidProperties.ts";
import { fluidWarnings } from "../../fluid/fluidWarnings.ts";
import type { FluidProperties, FluidState } from "../../model/fluid.ts";
import type { AddedMass, AxisDrag, DirectionDrag, ResolvedDrag, VehicleDrag } from "../../model/vehicle/drag.ts";
import type { DragFitData } from "../../model/vehicle/dragFit.ts";
import { positive } from "../../quantity/domain.ts";
import { InputProblem, OutOfDomain } from "../../quantity/problem.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { resolvedAddedMass } from "./addedMass.ts";
import { NO_LINEAR } from "./fitDocument.ts";
import { fitDrag } from "./fitDrag.ts";
import { shapeDrag } from "./shapeDrag.ts";

/**
 * Drag of every axis that a document gives, ready for use: C_D A (m²), linear term (N·s/m), added mass (kg), where it
 * comes from and the shapes it is made of. Astern is as forward, and up as down, where nothing else is given.
 * `vehicleWater` is for drags that name no water of their own.
 *
 * Source   `shapeDrag.ts`, `fitDrag.ts`, `addedMass.ts`.
 * Assumes  axes x forward, y to starboard, z down (SNAME, Technical and Research Bulletin 1-5 (1950)); no coupling.
 * Throws   InputProblem and OutOfDomain of the parts, told from the direction they are in; `vehicle.drag-no-fluid`.
 */
export function axisDrag(drag: VehicleDrag, vehicleWater?: FluidState): AxisDrag {
  const fluid = drag.fluid ?? vehicleWater ?? noFluid();
  const water = fluidProperties(fluid);
  const warnings: Warning[] = fluidWarnings(fluid);
  const { surge, sway, heave } = drag;
  const resolve = (direction: DirectionDrag, addedMass: AddedMass | undefined, where: string) => {
    const { resolved, warnings: told } = tellingWhere(where, () => resolvedDirection(direction, addedMass, water));
    warnings.push(...told.map((one) => ({ ...one, where: `${where}: ${one.where}` })));
    return resolved;
  };
  const mass = (given: AddedMass | undefined, axis: string) => {
    if (given === undefined) warnings.push(noAddedMass(axis));
    return given;
  };
  const [ofSurge, ofSway, ofHeave] = [
    surge && mass(surge.addedMass, "surge"),
    sway && mass(sway.addedMass, "sway"),
    heave && mass(heave.addedMass, "heave"),
  ];
  const forward = surge && resolve(surge.forward, ofSurge, "surge, forward");
  const astern = surge?.astern ? resolve(surge.astern, ofSurge, "surge, astern") : forward;
  const down = heave && resolve(heave.down, ofHeave, "heave, down");
  const up = heave?.up ? resolve(heave.up, ofHeave, "heave, up") : down;
  return {
    surge: forward && astern ? { forward, astern } : null,
    sway: sway ? resolve(sway.sideways, ofSway, "sway") : null,
    heave: up && down ? { up, down } : null,
    warnings,
  };
}

function noFluid(): never {
  throw new InputProblem({
    code: "vehicle.drag-no-fluid",
    where: "drag",
    found: "it is not said in which water the vehicle works",
    needed: "fresh or sea water with its temperature",
    mend: "Give the water",
  });
}

interface Resolution {
  readonly resolved: ResolvedDrag;
  readonly warnings: readonly Warning[];
}

function resolvedDirection(
  { drag, linear }: DirectionDrag,
  given: AddedMass | undefined,
  water: FluidProperties,
): Resolution {
  const addedMass = given ? resolvedAddedMass(given, water.density) : uncertain(0, 0);
  const typedLinear = linear && uncertain(linear.value, linear.standardUncertainty);
  if (drag.from === "typed") {
    const dragArea = uncertain(positive(drag.dragArea, "drag area", "m²"), drag.standardUncertainty);
    return {
      resolved: { dragArea, linear: typedLinear ?? NO_LINEAR, addedMass, from: "typed", rows: [] },
      warnings: [],
    };
  }
  if (drag.from === "shapes") {
    const { rows, dragArea, warnings } = shapeDrag(drag.items, {
      ...drag,
      kinematicViscosity: water.kinematicViscosity,
    });
    const from = `built up from ${rows.length} ${rows.length === 1 ? "shape" : "shapes"}`;
    return { resolved: { dragArea, linear: typedLinear ?? NO_LINEAR, addedMass, from, rows }, warnings };
  }
  const fit = fitDrag(withAddedMass(drag.data, given && addedMass));
  const { dragArea, warnings, method } = fit;
  const from = `fitted to ${METHOD_WORDS[method]}`;
  return { resolved: { dragArea, linear: typedLinear ?? fit.linear, addedMass, from, rows: [] }, warnings };
}

const METHOD_WORDS = {
  tow: "a tow",
  coastDown: "a coast-down",
  timedRuns: "timed runs",
  terminal: "sinking or climbing at terminal speed",
} as const;

/** A coast-down that states no added mass of its own is read with that of its axis. */
function withAddedMass(data: DragFitData, axis: Uncertain | undefined): DragFitData {
  if (data.method !== "coastDown" || data.addedMass !== undefined || axis === undefined) return data;
  return { ...data, addedMass: { value: axis.value, standardUncertainty: axis.standardUncertainty } };
}

function noAddedMass(axis: string): Warning {
  return warning({
    code: "vehicle.added-mass-missing",
    where: axis,
    found: "no added mass is given and it is taken as 0 kg, so that the vehicle starts and stops too fast",
    needed: "the mass of water that it drags along; steady speeds do not need it",
    mend: "Give it in kg, or a spheroid of like size",
  });
}

/** What goes wrong inside is told from the direction, with the place it had before. */
function tellingWhere<T>(where: string, action: () => T): T {
  try {
    return action();
  } catch (error) {
    if (error instanceof InputProblem) throw error.at([where, error.problem.where].filter(Boolean).join(", "));
    if (error instanceof OutOfDomain) throw new OutOfDomain({ ...error.problem, where });
    throw error;
  }
}
