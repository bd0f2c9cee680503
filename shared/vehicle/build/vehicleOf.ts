import type { DrivePropeller } from "../../model/drivePropeller.ts";
import type { SupplyAssembly } from "../../model/driveTrain.ts";
import type { FluidState } from "../../model/fluid.ts";
import type { Controller } from "../../model/parts/controller.ts";
import type { Gear } from "../../model/parts/gear.ts";
import type { Motor } from "../../model/parts/motor.ts";
import type { Pack } from "../../model/parts/pack.ts";
import type { TetherCable } from "../../model/parts/tetherCable.ts";
import type { ThrusterDrive, Vehicle } from "../../model/vehicle/vehicle.ts";
import type { DriveChoice, VehicleBuild } from "../../model/vehicle/vehicleBuild.ts";
import type { Problem } from "../../quantity/problem.ts";

/** Parts of a project by their identity. */
export interface VehicleParts {
  readonly motors: ReadonlyMap<string, Motor>;
  readonly controllers: ReadonlyMap<string, Controller>;
  readonly gears: ReadonlyMap<string, Gear>;
  readonly packs: ReadonlyMap<string, Pack>;
  readonly tethers: ReadonlyMap<string, TetherCable>;
}

/** What a build is completed with. */
export interface BuildFrom {
  readonly water: FluidState;
  readonly parts: VehicleParts;
  /** Propellers that were measured or predicted, by the names of variants and predictions. */
  readonly propellers: ReadonlyMap<string, DrivePropeller>;
}

export type BuiltVehicle =
  | { readonly state: "complete"; readonly vehicle: Vehicle }
  | { readonly state: "incomplete"; readonly problems: readonly Problem[] };

/** The vehicle that a build makes of the parts of its project; where one is missing, each missing one by name. */
export function vehicleOf(build: VehicleBuild, from: BuildFrom): BuiltVehicle {
  const problems: Problem[] = [];
  const found = <P>(kind: keyof VehicleParts, id: string, where: string): P | null => {
    const part = from.parts[kind].get(id);
    if (part === undefined) problems.push(missingPart(kind, id, where));
    return (part as P | undefined) ?? null;
  };
  const drives = build.drives.map((choice, i) => driveOf(choice, `drives.${i}`, { found, from, problems }));
  const { packId, throughTether, ...state } = build.supply;
  const pack = found<Pack>("packs", packId, "supply.packId");
  const cable = build.tether ? found<TetherCable>("tethers", build.tether.tetherId, "tether.tetherId") : null;
  if (throughTether && build.tether === undefined) problems.push(noTether());
  if (problems.length > 0 || pack === null) return { state: "incomplete", problems };
  const supply: SupplyAssembly = { ...state, pack, ...(throughTether && cable && { tether: cable }) };
  const { drives: _drives, supply: _supply, tether, ...own } = build;
  const complete = drives.filter((drive): drive is ThrusterDrive => drive !== null);
  return {
    state: "complete",
    vehicle: {
      ...{ ...own, water: from.water, drives: complete, supply },
      ...(tether && cable && { tether: { cable: cableOf(cable, tether.drag), motion: tether.motion } }),
    },
  };
}

interface Finding {
  readonly found: <P>(kind: keyof VehicleParts, id: string, where: string) => P | null;
  readonly from: BuildFrom;
  readonly problems: Problem[];
}

function driveOf(choice: DriveChoice, where: string, { found, from, problems }: Finding): ThrusterDrive | null {
  const { name, motorId, controllerId, gearId, propeller: chosen, asternEstimate } = choice;
  const motor = found<Motor>("motors", motorId, `${where}.motorId`);
  const controller =
    controllerId === undefined ? null : found<Controller>("controllers", controllerId, `${where}.controllerId`);
  const gear = gearId === undefined ? null : found<Gear>("gears", gearId, `${where}.gearId`);
  const propeller = chosen.from === "typed" ? chosen.propeller : from.propellers.get(chosen.name);
  if (propeller === undefined && chosen.from === "named") problems.push(missingPropeller(chosen.name, where, from));
  if (motor === null || propeller === undefined) return null;
  return {
    ...{ name, motor, propeller },
    ...(controller && { controller }),
    ...(gear && { gear }),
    ...(asternEstimate && { asternEstimate }),
  };
}

type TetherOfVehicle = NonNullable<Vehicle["tether"]>["cable"];

function cableOf(cable: TetherCable, drag: NonNullable<VehicleBuild["tether"]>["drag"]): TetherOfVehicle {
  const { name, diameter, weightInWater, strength } = cable;
  return {
    ...{ name, diameter, netWeightPerLength: weightInWater ?? 0, ...drag },
    ...(strength !== undefined && { strength }),
    relativeUncertainties: {
      ...{ diameter: 0.02, normalDragCoefficient: 0.15, tangentialDragCoefficient: 0.5, netWeightPerLength: 0 },
    },
  };
}

const KIND_WORDS: Readonly<Record<keyof VehicleParts, string>> = {
  ...{ motors: "motor", controllers: "controller", gears: "gear", packs: "pack", tethers: "tether" },
};

function missingPart(kind: keyof VehicleParts, id: string, where: string): Problem {
  return {
    code: "vehicle.missing-part",
    where,
    found: `The ${KIND_WORDS[kind]} ${id} is not among the parts`,
    needed: `a ${KIND_WORDS[kind]} that the project keeps`,
    mend: "Choose another, or add it to the parts",
  };
}

function missingPropeller(name: string, where: string, { propellers }: BuildFrom): Problem {
  const known = [...propellers.keys()];
  return {
    code: "vehicle.missing-propeller",
    where: `${where}.propeller`,
    found: `No variant that was measured and no prediction is called ${name}`,
    needed:
      known.length > 0 ? `one of ${known.join(", ")}` : "a measured variant or a prediction with thrust and torque",
    mend: "Choose another, reduce its runs, or type its coefficients",
  };
}

function noTether(): Problem {
  return {
    code: "vehicle.feed-without-tether",
    where: "supply.throughTether",
    found: "The pack feeds through the tether, and the vehicle has none",
    needed: "a tether with power conductors",
    mend: "Choose a tether, or put the pack aboard",
  };
}
