import type { z } from "zod";
import type { ShapeItem } from "../shared/model/vehicle/dragShapes.ts";
import type { DriveChoice, VehicleBuildInput } from "../shared/model/vehicle/vehicleBuild.ts";
import { INVENTED } from "./demoBox.ts";

type Shape = z.input<typeof ShapeItem>;
type Thrusters = VehicleBuildInput["thrusters"];

/** Outer sizes of the invented vehicle, m: a foam block on a frame with a housing under it. */
const LENGTH = 0.45;
const WIDTH = 0.3;
const FOAM = 0.06;
const HALF = Math.SQRT1_2;

const HORIZONTALS: Shape = { kind: "crossCylinder", name: "Level thrusters", diameter: 0.04, length: 0.08, count: 4 };
const UPRIGHTS: Shape = { kind: "crossCylinder", name: "Upright thrusters", diameter: 0.045, length: 0.09, count: 2 };
const bars = (length: number): Shape => ({
  ...{ kind: "crossCylinder", name: "Bars of the frame", diameter: 0.012, length, ends: "closed", count: 6 },
  exposedShare: 0.7,
});

const AHEAD: Shape[] = [
  { kind: "plate", name: "Foam block", width: WIDTH, height: FOAM },
  { kind: "roundedCylinder", name: "Main housing", diameter: 0.11, length: 0.33 },
  bars(WIDTH),
  { ...HORIZONTALS, exposedShare: 0.8 },
  UPRIGHTS,
  { kind: "hemisphere", name: "Lamps", diameter: 0.05, count: 2 },
  {
    ...{ kind: "stated", name: "Side plates, edge on", area: 2 * 0.006 * 0.2, dragCoefficient: 0.9 },
    ...{ relativeUncertainty: 0.2, source: "long flat bar along the flow, about 0.9; common practice, no source" },
  },
];
const SIDEWAYS: Shape[] = [
  { kind: "plate", name: "Foam block", width: LENGTH, height: FOAM },
  { kind: "crossCylinder", name: "Main housing", diameter: 0.11, length: 0.33, exposedShare: 0.6 },
  { kind: "plate", name: "Side plates, half cut away", width: LENGTH, height: 0.2, exposedShare: 0.5 },
  { ...HORIZONTALS, exposedShare: 0.6 },
];
const UPRIGHT: Shape[] = [
  { kind: "plate", name: "Foam block", width: LENGTH, height: WIDTH, exposedShare: 0.9 },
  { ...bars(WIDTH), exposedShare: 0.3 },
  { ...HORIZONTALS, exposedShare: 0.7 },
];

const shapes = (items: Shape[]) => ({ drag: { from: "shapes" as const, items, speed: 1 } });
const spheroid = (diameter: number, motion: "axial" | "lateral") => ({
  ...{ from: "spheroid" as const, length: LENGTH, diameter, motion },
});

/** Drag built up from shapes, in every direction. */
const BUILT_UP: VehicleBuildInput["drag"] = {
  surge: { forward: shapes(AHEAD), addedMass: spheroid(0.22, "axial") },
  sway: { sideways: shapes(SIDEWAYS), addedMass: spheroid(0.22, "lateral") },
  heave: { down: shapes(UPRIGHT), addedMass: spheroid(0.275, "lateral") },
};

const typed = (dragArea: number, standardUncertainty: number) => ({
  drag: { from: "typed" as const, dragArea, standardUncertainty, note: `Guessed from a like vehicle. ${INVENTED}` },
});
const TYPED: VehicleBuildInput["drag"] = {
  surge: {
    forward: typed(0.062, 0.009),
    astern: typed(0.07, 0.012),
    addedMass: { from: "typed", mass: 3, standardUncertainty: 0.8 },
  },
  sway: { sideways: typed(0.12, 0.02), addedMass: { from: "typed", mass: 7, standardUncertainty: 1.5 } },
  heave: { down: typed(0.16, 0.03), addedMass: { from: "typed", mass: 9, standardUncertainty: 2 } },
};

/** Four in the corners at 45° and two upright over the middle. */
function sixThrusters(level: string, upright: string): Thrusters {
  const [x, y] = [0.16, 0.13];
  const corner = (name: string, ahead: number, aside: number, port: number, spin: "clockwise" | "anticlockwise") => ({
    ...{ name, spin, drive: level, position: { x: ahead * x, y: aside * y, z: 0.02 } },
    direction: { x: HALF, y: port * HALF, z: 0 },
  });
  const lift = (name: string, aside: number, spin: "clockwise" | "anticlockwise") => ({
    ...{ name, spin, drive: upright, position: { x: 0, y: aside * 0.09, z: -0.04 } },
    direction: { x: 0, y: 0, z: 1 },
  });
  return [
    corner("Fore starboard", 1, 1, -1, "clockwise"),
    corner("Fore port", 1, -1, 1, "anticlockwise"),
    corner("Aft starboard", -1, 1, 1, "anticlockwise"),
    corner("Aft port", -1, -1, -1, "clockwise"),
    lift("Upright starboard", 1, "clockwise"),
    lift("Upright port", -1, "anticlockwise"),
  ];
}

const ASTERN = { thrustShare: 0.6, torqueShare: 0.75, relativeUncertainty: 0.2 };
const NET_DRIVE: DriveChoice = {
  ...{ name: "Net thruster", motorId: "a", controllerId: "stand", asternEstimate: ASTERN },
  propeller: { from: "named", name: "sanded" },
};

/** Coefficients of a propeller that nobody has measured yet, with the shape at speed of a plain three-blader. */
const LARGE_DRIVE: DriveChoice = {
  ...{ name: "Large thruster", motorId: "f", controllerId: "stand", gearId: "planetary", asternEstimate: ASTERN },
  propeller: {
    from: "typed",
    propeller: {
      ...{ name: "Large propeller, 110 mm", source: "typed", nozzle: false, bladeCount: 3, pitchRatio: 1 },
      from: "guessed from the small one; invented for the demonstration",
      diameter: { value: 0.11, standardUncertainty: 0.0002 },
      ahead: {
        thrustCoefficient: { value: 0.37, standardUncertainty: 0.025 },
        torqueCoefficient: { value: 0.056, standardUncertainty: 0.004 },
        correlation: 0.5,
        openWater: { thrust: [-0.22, -0.14], torque: [-0.022, -0.019], greatestAdvanceRatio: 0.9 },
      },
    },
  },
};

/** The work at the net: down, along it in both ways, a look, a lift, up. */
const MISSION: VehicleBuildInput["mission"] = {
  legs: [
    { name: "Down", kind: { does: "climb", speed: -0.2, distance: 8 } },
    {
      ...{ name: "Along the net", repeats: 2 },
      kind: { does: "swim", speed: 0.5, extent: { by: "duration", duration: 12 * 60 } },
    },
    { name: "Look at a mooring", kind: { does: "hold", duration: 8 * 60 } },
    { name: "Scrape a shackle", kind: { does: "push", force: 15, duration: 60 } },
    { name: "Wait for the boat", kind: { does: "rest", duration: 10 * 60 } },
    { name: "Up", kind: { does: "climb", speed: 0.2, distance: 8 } },
  ],
  reserve: 0.2,
  packTemperature: 273.15 + 12,
};

const REQUIREMENT: VehicleBuildInput["requirement"] = {
  ...{ speed: 1, againstCurrent: 0.5, tetherLength: 40, depth: 8, endurance: 45 * 60, lift: 0.5, climb: 0.1 },
  confidence: 0.9,
};

const SHARED = {
  mass: { value: 9, standardUncertainty: 0.2 },
  netBuoyancy: { value: 1.5, standardUncertainty: 0.3 },
  hotelPower: { value: 15, standardUncertainty: 1.5 },
  supply: { packId: "fourCells", charge: 1, temperature: 273.15 + 12 },
  tether: { tetherId: "signal", motion: "upperEndFixed" as const },
  scenario: {
    ...{ depth: 8, currentSpeed: 0.2, currentSpeedUncertainty: 0.05, currentFrom: 0 },
    ...{ tetherLength: 40, tetherOffset: 25 },
  },
  mission: MISSION,
  requirement: REQUIREMENT,
};

/** Vehicles of the demonstration. In place of identities stand the keys of its parts. */
export const DEMO_VEHICLES: readonly VehicleBuildInput[] = [
  {
    ...{ ...SHARED, name: "Dabchick, as built", note: INVENTED, drag: BUILT_UP },
    drives: [NET_DRIVE],
    thrusters: sixThrusters("Net thruster", "Net thruster"),
  },
  {
    ...{ ...SHARED, name: "Dabchick, larger propellers on a gear", drag: TYPED },
    note: `What four larger, slower propellers would change; those that lift stay. ${INVENTED}`,
    mass: { value: 9.6, standardUncertainty: 0.2 },
    drives: [LARGE_DRIVE, NET_DRIVE],
    thrusters: sixThrusters("Large thruster", "Net thruster"),
  },
];
