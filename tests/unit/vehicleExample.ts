import { Vehicle, type VehicleInput } from "../../shared/model/vehicle/vehicle.ts";

/** K_v of 500 rpm/V in rad/(V·s). */
export const KV_500 = (500 * 2 * Math.PI) / 60;

/** The water whose density is 998.598 kg/m³ at the surface. */
export const FRESH_18 = { kind: "fresh", temperature: 291.15 } as const;

/** Two equal thrusters side by side that push ahead, as in the outside case of a whole vehicle. */
export const TWO_THRUSTERS: VehicleInput = {
  name: "two thrusters",
  water: FRESH_18,
  mass: { value: 12 },
  drag: {
    surge: {
      forward: { drag: { from: "typed", dragArea: 0.03 } },
      addedMass: { from: "typed", mass: 4 },
    },
  },
  interaction: {
    wakeFraction: { value: 0 },
    thrustDeduction: { value: 0 },
  },
  drives: [
    {
      name: "stern",
      motor: { name: "motor", speedConstant: KV_500, resistance: 0.1, noLoadCurrent: 0.6 },
      controller: { name: "controller", resistance: 0.01 },
      propeller: {
        name: "propeller",
        diameter: { value: 0.07 },
        ahead: {
          thrustCoefficient: { value: 0.3 },
          torqueCoefficient: { value: 0.035 },
          openWater: { thrust: [-0.35], torque: [-0.03], greatestAdvanceRatio: 0.85 },
        },
      },
    },
  ],
  thrusters: [
    { name: "starboard", drive: "stern", position: { x: -0.2, y: 0.1, z: 0 }, direction: { x: 1, y: 0, z: 0 } },
    { name: "port", drive: "stern", position: { x: -0.2, y: -0.1, z: 0 }, direction: { x: 1, y: 0, z: 0 } },
  ],
  supply: { pack: { name: "pack", openCircuitVoltage: 16, resistance: 0.15 } },
  hotelPower: { value: 10 },
};

/** A vehicle from its document as a person writes it. */
export const vehicleFrom = (input: VehicleInput): Vehicle => Vehicle.parse(input);

const r = Math.SQRT1_2;

const propellerCurve = (K_T: number, K_Q: number) => ({
  thrustCoefficient: { value: K_T, standardUncertainty: 0.02 * K_T },
  torqueCoefficient: { value: K_Q, standardUncertainty: 0.02 * K_Q },
  correlation: 0.3,
  openWater: { thrust: [-0.35], torque: [-0.03], greatestAdvanceRatio: 0.85 },
});

/** Six thrusters, four of them turned out by 45°, on a battery, with a tether, a requirement and doubts of most inputs. */
export const SIX_THRUSTERS: VehicleInput = {
  name: "six thrusters",
  water: { kind: "sea", temperature: 283.15, salinity: 33 },
  mass: { value: 12, standardUncertainty: 0.2 },
  netBuoyancy: { value: 1.5, standardUncertainty: 0.3 },
  drag: {
    surge: {
      forward: { drag: { from: "typed", dragArea: 0.055, standardUncertainty: 0.006 } },
      addedMass: { from: "typed", mass: 5, standardUncertainty: 1 },
    },
    sway: {
      sideways: { drag: { from: "typed", dragArea: 0.09, standardUncertainty: 0.01 } },
      addedMass: { from: "typed", mass: 9 },
    },
    heave: {
      down: { drag: { from: "typed", dragArea: 0.12, standardUncertainty: 0.015 } },
      addedMass: { from: "typed", mass: 12 },
    },
  },
  drives: [
    {
      name: "thruster",
      motor: {
        name: "motor",
        speedConstant: KV_500,
        resistance: 0.12,
        noLoadCurrent: 0.5,
        currentLimit: 18,
        uncertainties: { speedConstant: 0.6, resistance: 0.005, noLoadCurrent: 0.05 },
      },
      controller: { name: "controller", resistance: 0.01, standbyPower: 0.3 },
      propeller: {
        name: "propeller",
        diameter: { value: 0.07, standardUncertainty: 0.0002 },
        ahead: propellerCurve(0.3, 0.035),
        astern: propellerCurve(0.22, 0.034),
      },
    },
  ],
  thrusters: [
    {
      name: "fore starboard",
      drive: "thruster",
      position: { x: 0.2, y: 0.15, z: 0 },
      direction: { x: r, y: -r, z: 0 },
    },
    { name: "fore port", drive: "thruster", position: { x: 0.2, y: -0.15, z: 0 }, direction: { x: r, y: r, z: 0 } },
    { name: "aft starboard", drive: "thruster", position: { x: -0.2, y: 0.15, z: 0 }, direction: { x: r, y: r, z: 0 } },
    { name: "aft port", drive: "thruster", position: { x: -0.2, y: -0.15, z: 0 }, direction: { x: r, y: -r, z: 0 } },
    {
      name: "starboard vertical",
      drive: "thruster",
      position: { x: 0, y: 0.12, z: 0 },
      direction: { x: 0, y: 0, z: 1 },
    },
    { name: "port vertical", drive: "thruster", position: { x: 0, y: -0.12, z: 0 }, direction: { x: 0, y: 0, z: 1 } },
  ],
  supply: {
    pack: {
      name: "pack",
      openCircuitVoltage: 16,
      resistance: 0.08,
      charge: 36000,
      currentLimit: 60,
      uncertainties: { openCircuitVoltage: 0.1, resistance: 0.01 },
    },
  },
  hotelPower: { value: 15, standardUncertainty: 2 },
  tether: { cable: { diameter: 0.006, netWeightPerLength: 0.02 } },
  scenario: { depth: 10, tetherLength: 40, tetherOffset: 10, currentSpeed: 0.3, currentSpeedUncertainty: 0.05 },
  requirement: {
    speed: 0.5,
    againstCurrent: 0.3,
    tetherLength: 40,
    depth: 10,
    climb: 0.2,
    lift: 1,
    holdCurrent: 0.4,
    stoppingDistance: 1,
  },
};
