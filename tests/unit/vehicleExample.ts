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
