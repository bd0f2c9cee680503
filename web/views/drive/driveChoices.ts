import { computed, signal } from "@preact/signals";
import type { DrivePropeller } from "../../../shared/model/drivePropeller.ts";
import type { DriveDirection } from "../../../shared/model/driveTrainPoint.ts";
import type { FluidState } from "../../../shared/model/fluid.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { densityOf } from "../../app/densityOf.ts";
import { parts, project } from "../../app/session.ts";

export const throttle = signal(0.6);
export const direction = signal<DriveDirection>("ahead");
/** Speed of the water into the propeller, m/s. */
export const advanceSpeed = signal(0);
export const thrusters = signal(1);
export const hotelPower = signal(0);
/** Share of the charge that is left; null: as the pack's voltage was stated. */
export const charge = signal<number | null>(null);
/** Temperature of pack, leads and tether, K; null: 20 °C. */
export const supplyTemperature = signal<number | null>(null);
/** Depth of the shaft, m; null: cavitation and air drawn in are left out. */
export const depth = signal<number | null>(null);
/** Static merit that stands in where no torque was measured. */
export const statedMerit = signal(0.5);
/** The coefficients are carried to the Reynolds number at work, here and in what Overview and Report tell of the thrusters. */
export const reynoldsCarried = signal(true);
/** Null: the water of the project. */
export const chosenFluid = signal<FluidState | null>(null);

export const fluid = computed((): FluidState => chosenFluid.value ?? project.value!.document.water);
export const fluidProblem = computed(() => densityOf(fluid).value.problem);

/** Coefficients written by hand. */
export interface TypedPropeller {
  readonly name: string;
  /** m. */
  readonly diameter: number;
  readonly thrustCoefficient: number;
  /** Null: worked out from the stated static merit. */
  readonly torqueCoefficient: number | null;
}

/** Null when none are typed. */
export const typed = signal<TypedPropeller | null>(null);

/** A propeller that was brought here from another screen; null for none. */
export const brought = signal<DrivePropeller | null>(null);

type ChosenPart = "motor" | "controller" | "pack" | "tether" | "gear";
const chosenIds = signal<Readonly<Partial<Record<ChosenPart, string>>>>({});

export function choosePart(kind: ChosenPart, id: string): void {
  chosenIds.value = { ...chosenIds.value, [kind]: id };
}

const named = <T>(list: readonly StoredDocument<T>[], id: string | undefined) => list.find((one) => one.id === id);

export const motor = computed(() => named(parts.value.motors, chosenIds.value.motor) ?? parts.value.motors[0]);
export const pack = computed(() => named(parts.value.packs, chosenIds.value.pack) ?? parts.value.packs[0]);
/** The first controller there is, unless the builder chose none. */
export const controller = computed(() => {
  const { controllers } = parts.value;
  const id = chosenIds.value.controller;
  return id === "none" ? undefined : (named(controllers, id) ?? controllers[0]);
});
/** None unless chosen. */
export const tether = computed(() => named(parts.value.tethers, chosenIds.value.tether));
export const gear = computed(() => named(parts.value.gears, chosenIds.value.gear));
