import { DriveTrain, type DriveTrainInput } from "../../shared/model/driveTrain.ts";

/** The base case of the tests of the whole chain: K_v 500 rpm/V, 16 V behind 0.15 Ω, 70 mm, K_T 0.30, K_Q 0.035. */
export const TRAIN: DriveTrainInput = {
  supply: { pack: { name: "pack", openCircuitVoltage: 16, resistance: 0.15 } },
  controller: { name: "controller", resistance: 0.01, command: {} },
  motor: { name: "motor", speedConstant: (500 * Math.PI) / 30, resistance: 0.1, noLoadCurrent: 0.6 },
  propeller: {
    name: "propeller",
    diameter: { value: 0.07 },
    ahead: {
      thrustCoefficient: { value: 0.3, standardUncertainty: 0.006 },
      torqueCoefficient: { value: 0.035, standardUncertainty: 0.001 },
      correlation: 0.4,
      openWater: { thrust: [-0.35], torque: [-0.03], greatestAdvanceRatio: 0.85 },
    },
    astern: { thrustCoefficient: { value: 0.2 }, torqueCoefficient: { value: 0.034 } },
  },
  water: { kind: "fresh", temperature: 288.15 },
};

/** A drive train like the base case with other parts. */
export function trainWith(more: Partial<DriveTrainInput> = {}): DriveTrain {
  return DriveTrain.parse({ ...TRAIN, ...more });
}
