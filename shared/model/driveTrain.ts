import { z } from "zod";
import { DrivePropeller } from "./drivePropeller.ts";
import { si } from "./fields.ts";
import { FluidState } from "./fluid.ts";
import { hotelLoad } from "./hotelLoad.ts";
import { Controller } from "./parts/controller.ts";
import { Gear } from "./parts/gear.ts";
import { Motor } from "./parts/motor.ts";
import { Pack } from "./parts/pack.ts";
import { TetherCable } from "./parts/tetherCable.ts";

/** What feeds the thrusters: a pack or a source on the surface, and the tether between, with their state. */
export const SupplyAssembly = z
  .strictObject({
    pack: Pack.describe("Pack aboard, or the source at the upper end of the tether"),
    tether: TetherCable.exactOptional().describe("Tether that carries the power; absent: the pack is aboard"),
    charge: si(z.number().min(0).max(1), {
      symbol: "s",
      unit: "1",
      text: "Share of the charge that is left; as the pack's voltage was stated if absent",
    }).exactOptional(),
    temperature: si(z.number().min(233).max(343), {
      symbol: "T",
      unit: "K",
      text: "Temperature of pack, leads and tether; 20 °C if absent",
    }).exactOptional(),
  })
  .meta({ id: "SupplyAssembly" });
export type SupplyAssembly = z.infer<typeof SupplyAssembly>;

/** Supply, controller, motor, gear and propeller, N times over on one bus, in the water they work in. */
export const DriveTrain = z
  .strictObject({
    supply: SupplyAssembly,
    controller: Controller.exactOptional().describe("Absent: no resistance, no loss, no limit"),
    motor: Motor,
    gear: Gear.exactOptional().describe("Absent: the propeller sits on the motor shaft"),
    propeller: DrivePropeller,
    thrusters: z.int().min(1).max(64).default(1).describe("Equal thrusters at one throttle on the same supply"),
    ...hotelLoad,
    water: FluidState.describe("The water they work in"),
    depth: si(z.number().min(0).max(11000), {
      symbol: "h",
      unit: "m",
      text: "Depth of the shaft, for cavitation and ventilation; absent: these limits are left out",
    }).exactOptional(),
  })
  .meta({ id: "DriveTrain" });
export type DriveTrain = z.infer<typeof DriveTrain>;
export type DriveTrainInput = z.input<typeof DriveTrain>;
