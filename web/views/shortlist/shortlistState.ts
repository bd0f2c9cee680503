import { batch, computed, effect, signal } from "@preact/signals";
import type { FluidState } from "../../../shared/model/fluid.ts";
import type {
  PartsBoxInput,
  ShortlistRequestInput,
  ShortlistRequirementInput,
} from "../../../shared/model/shortlist.ts";
import { parts, project, projectId } from "../../app/session.ts";
import { asternEstimate } from "../drive/asternShare.ts";
import { drivePropellers } from "../drive/drivePropellers.ts";
import { type BoxChoices, boxOf, NOTHING_LEFT_OUT, sizeText } from "./box.ts";
import { type Demands, demandsOf } from "./demands.ts";
import { missingFrom, startOf } from "./requirementStart.ts";
import { EQUAL_START, type Weights } from "./weights.ts";

export const demands = signal<Demands>({});
export const position = signal("horizontal");
/** Null: not said yet. */
export const thrusters = signal<number | null>(null);
/** Null: left empty, which counts as none. */
export const hotelPower = signal<number | null>(null);

/** A project begins with what it states itself; nothing that was typed for another is asked of it. */
effect(() => {
  if (projectId.value === null) return;
  const start = startOf(project.peek()!.document);
  batch(() => {
    demands.value = start.demands;
    position.value = start.position;
    thrusters.value = start.thrusters;
    hotelPower.value = start.hotelPower;
  });
});

/** What must be said before a search makes sense; null where enough is said. */
export const missing = computed(() => missingFrom({ demands: demandsOf(demands.value), thrusters: thrusters.value }));

export const counted = signal<"thruster" | "all">("thruster");
/** Null: the best estimate decides. */
export const confidence = signal<number | null>(0.95);
export const weights = signal<Weights>(EQUAL_START);
/** Share of the coefficients ahead taken astern where nothing was measured; null: such propellers push ahead only. */
export const asternShare = signal<number | null>(0.6);
/** Null: the water of the project. */
export const chosenWater = signal<FluidState | null>(null);
export const water = computed((): FluidState => chosenWater.value ?? project.value!.document.water);

/** Which parts are left out, and what is tried besides. */
export const boxChoices = signal<BoxChoices>(NOTHING_LEFT_OUT);

export const requirement = computed(
  (): ShortlistRequirementInput => ({
    name: position.value.trim() === "" ? "Shortlist" : `Shortlist, ${position.value}`,
    position: position.value,
    thrusters: thrusters.value ?? 1,
    ...demandsOf(demands.value),
    ...(asternShare.value !== null && { asternEstimate: asternEstimate(asternShare.value) }),
    water: water.value,
    hotelPower: hotelPower.value ?? 0,
    counted: counted.value,
    ...(confidence.value === null ? {} : { confidence: confidence.value }),
    weights: { ...weights.value },
  }),
);

export const box = computed(
  (): PartsBoxInput =>
    boxOf(
      parts.value,
      drivePropellers.value.map(({ propeller }) => propeller),
      boxChoices.value,
    ),
);
export const boxSize = computed(() => sizeText(box.value));

export const request = computed(
  (): ShortlistRequestInput => ({
    requirement: requirement.value,
    box: box.value,
    monteCarlo: { rows: 5, draws: 10_000, seed: 1 },
  }),
);
