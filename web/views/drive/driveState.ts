import { computed, signal } from "@preact/signals";
import { operatingPoint } from "../../../shared/drive/operatingPoint.ts";
import { throttleSweep } from "../../../shared/drive/throttleSweep.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { FluidState } from "../../../shared/model/fluid.ts";
import type { Pack } from "../../../shared/model/parts/pack.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { densityOf } from "../../app/densityOf.ts";
import { parts, project } from "../../app/session.ts";
import { subjects } from "../theory/subject.ts";
import { groups } from "../variants/variantsState.ts";
import { currentChart, SWEEP_STEPS, thrustChart } from "./driveCharts.ts";
import { type Chosen, type Driven, type DrivenPropeller, driveAnswer, driveRequest } from "./driveModel.ts";
import { drivenPropellers, type TypedPropeller } from "./drivenPropellers.ts";
import { leftOutText } from "./fromStand.ts";

export const throttle = signal(0.6);
export const thrusters = signal(1);
export const hotelPower = signal(0);
/** Static merit that stands in where no torque was measured. */
export const statedMerit = signal(0.5);
/** Null: the water of the project. */
export const chosenFluid = signal<FluidState | null>(null);
/** Coefficients typed by hand, next to the measured variants; null when none are. */
export const typed = signal<TypedPropeller | null>(null);

export const fluid = computed((): FluidState => chosenFluid.value ?? project.value!.document.water);

type ChosenPart = "motor" | "controller" | "pack";
const chosenIds = signal<Readonly<Partial<Record<ChosenPart, string>>>>({});

export function choosePart(kind: ChosenPart, id: string): void {
  chosenIds.value = { ...chosenIds.value, [kind]: id };
}

const firstOr = <T extends { readonly id: string }>(list: readonly T[], id: string | undefined): T | undefined =>
  list.find((one) => one.id === id) ?? list[0];

export const motor = computed(() => firstOr(parts.value.motors, chosenIds.value.motor));
export const pack = computed(() => firstOr(parts.value.packs, chosenIds.value.pack));
export const controller = computed(() =>
  chosenIds.value.controller === "none" ? undefined : firstOr(parts.value.controllers, chosenIds.value.controller),
);

const density = densityOf(fluid);
export const fluidProblem = computed(() => density.value.problem);

export const chosen = computed((): Chosen | null => {
  const rho = density.value.value;
  if (motor.value === undefined || pack.value === undefined || rho === null) return null;
  return {
    motor: motor.value.document,
    controller: controller.value?.document ?? null,
    pack: pack.value.document as Pack,
    thrusters: thrusters.value,
    hotelPower: hotelPower.value,
    density: rho,
  };
});

export const propellers = computed(() => drivenPropellers(groups.value, statedMerit.value, typed.value));

interface Swept {
  readonly propeller: DrivenPropeller;
  readonly sweep: readonly OperatingPoint[];
  readonly problem: string;
}

/** Whole sweeps; they do not depend on the throttle, so moving the throttle leaves them alone. */
const swept = computed((): Swept[] => {
  const drive = chosen.value;
  if (drive === null) return [];
  return propellers.value.map((propeller) => {
    try {
      return { propeller, sweep: throttleSweep(driveRequest(drive, propeller, 0), SWEEP_STEPS), problem: "" };
    } catch (thrown) {
      return { propeller, sweep: [], problem: sentenceOf(thrown) };
    }
  });
});

export const driven = computed((): Driven[] => {
  const drive = chosen.value;
  if (drive === null) return [];
  return swept.value.map((one) => {
    if (one.problem !== "") return { ...one, point: null };
    try {
      return { ...one, point: operatingPoint(driveRequest(drive, one.propeller, throttle.value)) };
    } catch (thrown) {
      return { ...one, point: null, problem: sentenceOf(thrown) };
    }
  });
});

/** One sentence a measured propeller: what its Reynolds number in this water would change, which is not in the numbers. */
export const leftOut = computed((): string[] =>
  driven.value.flatMap((one) => {
    const subject = subjects.value.find(({ name }) => name === one.propeller.name);
    const stand = groups.value.find(({ name }) => name === one.propeller.name)?.members[0]?.run.recipe.fluid;
    if (subject === undefined || stand === undefined) return [];
    return leftOutText(one, { subject, fluid: stand }, fluid.value) || [];
  }),
);

export const answer = computed(() => driveAnswer(driven.value, throttle.value, thrusters.value));
export const thrustPicture = computed(() => thrustChart(driven.value, throttle.value));
export const currentPicture = computed(() => currentChart(driven.value, throttle.value));
