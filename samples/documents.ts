import type { DrivePropeller } from "../shared/model/drivePropeller.ts";
import { Controller } from "../shared/model/parts/controller.ts";
import { Gear } from "../shared/model/parts/gear.ts";
import { Motor } from "../shared/model/parts/motor.ts";
import { Pack } from "../shared/model/parts/pack.ts";
import { TetherCable } from "../shared/model/parts/tetherCable.ts";
import type { PartsBoxInput, ShortlistRequirementInput } from "../shared/model/shortlist.ts";
import type { Vehicle } from "../shared/model/vehicle/vehicle.ts";
import { VehicleBuild } from "../shared/model/vehicle/vehicleBuild.ts";
import { vehicleOf } from "../shared/vehicle/build/vehicleOf.ts";
import { DEMO } from "./demo.ts";

/**
 * The sanded propeller as the workbench reduces its three logs, rounded, so that the documents stand alone: the vehicle of
 * the file is then the one that the demonstration shows.
 */
const SANDED: DrivePropeller = {
  ...{ name: "sanded", source: "measured", bladeCount: 3, pitchRatio: 1, areaRatio: 0.3824, nozzle: false },
  from: "measured at rest, at speed by the shape of the series of equal pitch; invented for the demonstration",
  ...{ mass: 0.018, price: 4, diameter: { value: 0.076, standardUncertainty: 0 } },
  ahead: {
    thrustCoefficient: { value: 0.27667, standardUncertainty: 0.00148 },
    torqueCoefficient: { value: 0.033724, standardUncertainty: 0.000228 },
    correlation: 0,
    openWater: {
      thrust: [-0.144778, -0.133317, 0.036229],
      torque: [-0.016634, -0.007383, -0.002524],
      greatestAdvanceRatio: 1.114,
    },
  },
};

const ASTERN = { thrustShare: 0.6, torqueShare: 0.75, relativeUncertainty: 0.2 };

/** A requirement for the level thrusters of the Dabchick. */
const REQUIREMENT: ShortlistRequirementInput = {
  ...{ name: "Level thrusters of the Dabchick", position: "horizontal", thrusters: 2, asternEstimate: ASTERN },
  ...{ thrustAhead: 15, thrustAstern: 6, diameter: 0.08, hotelPower: 15, depth: 8, confidence: 0.95 },
  endurance: { meanThrust: 4, duration: 45 * 60, reserve: 0.2 },
  water: DEMO.project.water,
  weights: { thrustPerPower: 3, mass: 1, price: 1, thrustMargin: 1, tipSpeed: 0, endurance: 0 },
};

const all = <T>(parts: Readonly<Record<string, unknown>>, schema: { parse: (part: unknown) => T }): Map<string, T> =>
  new Map(Object.entries(parts).map(([key, part]) => [key, schema.parse(part)]));

const PARTS = {
  motors: all(DEMO.motors, Motor),
  controllers: all(DEMO.controllers, Controller),
  packs: all(DEMO.packs, Pack),
  tethers: all(DEMO.tethers, TetherCable),
  gears: all(DEMO.gears, Gear),
};

/** The parts box of the demonstration, with the propeller in two more sizes and some of a series to try. */
const PARTS_BOX: PartsBoxInput = {
  ...{ motors: [...PARTS.motors.values()], controllers: [...PARTS.controllers.values()] },
  ...{ packs: [...PARTS.packs.values()], gears: [...PARTS.gears.values()] },
  ...{ propellers: [SANDED], scaleTo: [0.066, 0.08] },
  series: [
    {
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.5 },
      ...{ pitchRatios: [0.8, 1, 1.2], diameters: [0.07, 0.08] },
    },
  ],
};

/** The vehicle of the demonstration as it is built, complete in itself. */
function sampleVehicle(): Vehicle {
  const build = VehicleBuild.parse(DEMO.vehicles[0]);
  const built = vehicleOf(build, {
    water: DEMO.project.water as Vehicle["water"],
    parts: PARTS,
    propellers: new Map([[SANDED.name, SANDED]]),
  });
  if (built.state === "complete") return built.vehicle;
  throw new Error(built.problems.map(({ found }) => found).join("; "));
}

/** Documents for the command line, by the name of their file. */
export const sampleDocuments = (): Readonly<Record<string, unknown>> => ({
  "requirement.json": REQUIREMENT,
  "parts-box.json": PARTS_BOX,
  "vehicle.json": sampleVehicle(),
});
