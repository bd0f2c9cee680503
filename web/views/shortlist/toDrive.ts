import { batch } from "@preact/signals";
import type { DriveTrain } from "../../../shared/model/driveTrain.ts";
import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { brought, choosePart, hotelPower, thrusters } from "../drive/driveChoices.ts";
import { allGroups, showVariant } from "../variants/variantsState.ts";

/** Sets Drive to a combination that was found, and goes there. */
export function openOnDrive({ motor, controller, gear, supply, propeller, ...train }: DriveTrain): void {
  const idOf = (
    list: readonly { readonly id: string; readonly document: { readonly name: string } }[],
    name?: string,
  ) => list.find(({ document }) => document.name === name)?.id ?? "none";
  const { motors, controllers, gears, packs, tethers } = parts.value;
  batch(() => {
    choosePart("motor", idOf(motors, motor.name));
    choosePart("controller", idOf(controllers, controller?.name));
    choosePart("gear", idOf(gears, gear?.name));
    choosePart("pack", idOf(packs, supply.pack.name));
    choosePart("tether", idOf(tethers, supply.tether?.name));
    thrusters.value = train.thrusters;
    hotelPower.value = train.hotelPower;
    const measured = allGroups.value.some(({ name }) => name === propeller.name);
    brought.value = measured ? null : propeller;
    if (measured) showVariant(propeller.name, true);
  });
  location.hash = addressOf("drive");
}
