import { computed, signal } from "@preact/signals";
import type { FluidState } from "../../../shared/model/fluid.ts";
import type {
  PartsBoxInput,
  ShortlistRequestInput,
  ShortlistRequirementInput,
} from "../../../shared/model/shortlist.ts";
import { parts, project } from "../../app/session.ts";
import { asternEstimate } from "../drive/asternShare.ts";
import { drivePropellers } from "../drive/drivePropellers.ts";
import { type BoxChoices, boxOf, NOTHING_LEFT_OUT, sizeText } from "./box.ts";
import { type Demands, demandsOf } from "./demands.ts";
import { EQUAL_START, type Weights } from "./weights.ts";

/** What is asked to begin with: something a small thruster can do. */
export const demands = signal<Demands>({ thrustAhead: 15, thrustAstern: 6, diameter: 0.08 });
export const position = signal("horizontal");
export const thrusters = signal(2);
export const hotelPower = signal(10);
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
    thrusters: thrusters.value,
    ...demandsOf(demands.value),
    ...(asternShare.value !== null && { asternEstimate: asternEstimate(asternShare.value) }),
    water: water.value,
    hotelPower: hotelPower.value,
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
