import { computed, signal } from "@preact/signals";
import type { FluidState } from "../../../shared/model/fluid.ts";
import { densityOf } from "../../app/densityOf.ts";
import { partOf, project, runs } from "../../app/session.ts";
import { reductionsOf } from "../variants/variantGroups.ts";
import { meanStaticMerit } from "../variants/variantMean.ts";
import { groups } from "../variants/variantsState.ts";
import { type PowerKind, thrustPowerChart, thrustRateChart } from "./theoryCharts.ts";
import { benchDisc, estimate, type MeasuredVariant, type TheoryInputs, theoryAnswer } from "./theoryModel.ts";

/** What the person has set; null: not touched, so it follows from the project and its runs. */
export const staticMerit = signal(0.5);
/** Null: as the propellers on show are described. */
export const chosenNozzle = signal<boolean | null>(null);
export const nozzleAreaRatio = signal(1);
export const driveEfficiency = signal(0.75);
export const voltage = signal(14.8);
export const duty = signal<TheoryInputs["duty"]>({ given: "thrust", thrust: 20 });
export const powerKind = signal<PowerKind>("shaftPower");
export const chosenDiameter = signal<number | null>(null);
export const chosenFluid = signal<FluidState | null>(null);

export const measured = computed((): MeasuredVariant[] =>
  groups.value.map((group) => {
    const reductions = reductionsOf(group);
    return { name: group.name, style: group.style, reductions, staticMerit: meanStaticMerit(reductions) };
  }),
);

export const nozzle = computed(
  () =>
    chosenNozzle.value ??
    groups.value.some(({ members }) =>
      members.some(({ run }) => partOf("propellers", run.propellerId)?.document.nozzle === true),
    ),
);

/** Diameter and water of the bench until others are chosen. */
export const diameter = computed(
  () => chosenDiameter.value ?? measured.value.flatMap(({ reductions }) => reductions)[0]?.diameter.value ?? 0.076,
);
export const fluid = computed(
  (): FluidState => chosenFluid.value ?? runs.value[0]?.document.recipe.fluid ?? project.value!.document.water,
);

const density = densityOf(fluid);
export const fluidProblem = computed(() => density.value.problem);

/** Null while the water chosen has no density. */
export const inputs = computed((): TheoryInputs | null => {
  const rho = density.value.value;
  if (rho === null) return null;
  return {
    staticMerit: staticMerit.value,
    diameter: diameter.value,
    density: rho,
    nozzleAreaRatio: nozzle.value ? nozzleAreaRatio.value : null,
    driveEfficiency: driveEfficiency.value,
    voltage: voltage.value,
    duty: duty.value,
  };
});

/** The same for the propellers that were measured: their disc in the water of the bench, so that limit and points belong together. */
export const benchInputs = computed((): TheoryInputs | null => {
  const stated = inputs.value;
  return stated === null ? null : { ...stated, ...benchDisc(measured.value) };
});

export const answer = computed(() =>
  benchInputs.value === null ? "" : theoryAnswer(measured.value, benchInputs.value),
);
export const powerChart = computed(() =>
  benchInputs.value === null ? null : thrustPowerChart(measured.value, benchInputs.value, powerKind.value),
);
export const rateChart = computed(() =>
  benchInputs.value === null ? null : thrustRateChart(measured.value, benchInputs.value),
);
/** What the stated numbers lead to, whatever was measured. */
export const following = computed(() => (inputs.value === null ? null : estimate(inputs.value)));
