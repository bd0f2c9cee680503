import { computed, signal } from "@preact/signals";
import { noteChoice, route } from "../../app/route.ts";
import { partOf } from "../../app/session.ts";
import { reductionsOf } from "../variants/variantGroups.ts";
import { meanStaticMerit } from "../variants/variantMean.ts";
import { groups } from "../variants/variantsState.ts";
import { besidePrediction, bestOf } from "./closeness/closenessModel.ts";
import { EXAMPLE_DIAMETER } from "./exampleDisc.ts";
import { type OpenWaterQuantity, openWaterPicture } from "./pictures/openWaterPictures.ts";
import { type PowerKind, thrustPowerChart } from "./pictures/powerPicture.ts";
import { thrustRateChart } from "./pictures/ratePicture.ts";
import { type ResidualAgainst, type ResidualOf, residualPicture } from "./pictures/residualPictures.ts";
import { type Held, type SpeedInputs, speedPicture, variantsAtSpeed } from "./pictures/speedPicture.ts";
import { shownPredictions } from "./predictions/predictionsState.ts";
import { startingPropeller } from "./predictions/startingPropeller.ts";
import { wholeRate } from "./subject.ts";
import { fluidDensity } from "./theoryFluid.ts";
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

/** The pictures of this screen; the address keeps which one is seen. */
export const PICTURES = {
  power: "Thrust against power",
  rate: "Thrust against rotation rate",
  advance: "Coefficients against advance ratio",
  speed: "Thrust against speed",
  residual: "Measured over predicted",
} as const;
export type PictureName = keyof typeof PICTURES;

export const picture = computed((): PictureName => {
  const named = route.value.choices.get("picture");
  return named !== null && named in PICTURES ? (named as PictureName) : "power";
});
export function showPicture(name: PictureName): void {
  noteChoice("picture", name);
}

export const measured = computed((): MeasuredVariant[] =>
  groups.value.map((group) => {
    const reductions = reductionsOf(group);
    const part = group.members
      .map(({ run }) => partOf("propellers", run.propellerId)?.document)
      .find((one) => one !== undefined);
    const nozzle = chosenNozzle.value ?? part?.nozzle ?? false;
    return { name: group.name, style: group.style, reductions, staticMerit: meanStaticMerit(reductions), nozzle };
  }),
);

export const nozzle = computed(
  () =>
    chosenNozzle.value ??
    groups.value.some(({ members }) =>
      members.some(({ run }) => partOf("propellers", run.propellerId)?.document.nozzle === true),
    ),
);

/** The diameter chosen, that of the bench, or of the first propeller among the parts; null where none is known. */
const knownDiameter = computed(
  () =>
    chosenDiameter.value ??
    measured.value.flatMap(({ reductions }) => reductions)[0]?.diameter.value ??
    startingPropeller()?.diameter ??
    null,
);
export const diameter = computed(() => knownDiameter.value ?? EXAMPLE_DIAMETER);
/** The disc on show is nobody's propeller. */
export const isExample = computed(() => knownDiameter.value === null);
/** Null while the water chosen has no density. */
export const inputs = computed((): TheoryInputs | null => {
  const rho = fluidDensity.value;
  if (rho === null) return null;
  return {
    staticMerit: staticMerit.value,
    diameter: diameter.value,
    isExample: isExample.value,
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
  benchInputs.value === null
    ? null
    : thrustPowerChart(measured.value, benchInputs.value, {
        kind: powerKind.value,
        predictions: shownPredictions.value,
      }),
);
export const rateChart = computed(() =>
  benchInputs.value === null ? null : thrustRateChart(measured.value, benchInputs.value, shownPredictions.value),
);

/** Rotation rate of blade elements in the open-water diagram until one is chosen: the greatest that was measured, rev/s. */
export const chosenRate = signal<number | null>(null);
const UNMEASURED_RATE = 50;
export const diagramRate = computed(() => {
  const rates = measured.value.flatMap(({ reductions }) =>
    reductions.flatMap(({ plateaus }) => plateaus.map(({ rotationRate }) => rotationRate.value)),
  );
  return chosenRate.value ?? (rates.length === 0 ? UNMEASURED_RATE : wholeRate(Math.max(...rates)));
});

const QUANTITIES: readonly OpenWaterQuantity[] = ["thrustCoefficient", "torqueCoefficient", "efficiency"];
export const openWaterCharts = computed(() =>
  QUANTITIES.map((of) =>
    openWaterPicture(
      { variants: measured.value, predictions: shownPredictions.value, rotationRate: diagramRate.value },
      of,
    ),
  ).filter(({ series }) => series.length > 0),
);

/** What stays the same while the speed grows. */
export const held = signal<Held | null>(null);
export const heldNow = computed((): Held => held.value ?? { given: "shaftPower", shaftPower: DEFAULT_POWER });
const DEFAULT_POWER = 100;
/** Speed the picture against speed ends at, m/s: about as fast as small vehicles go. */
export const topSpeed = signal(3);
/** Name of the prediction whose fall with speed is taken; null: the first that can be computed; "" momentum theory alone. */
export const chosenShape = signal<string | null>(null);
export const shape = computed(() => {
  if (chosenShape.value === "") return null;
  return (
    yardsticks.value.find(({ prediction }) => prediction.name === chosenShape.value) ?? yardsticks.value[0] ?? null
  );
});
const speedInputs = computed((): SpeedInputs | null =>
  benchInputs.value === null
    ? null
    : {
        variants: measured.value,
        predictions: shownPredictions.value,
        inputs: benchInputs.value,
        held: heldNow.value,
        shape: shape.value,
        topSpeed: topSpeed.value,
      },
);
export const atSpeed = computed(() => (speedInputs.value === null ? [] : variantsAtSpeed(speedInputs.value)));
export const speedChart = computed(() =>
  speedInputs.value === null ? null : speedPicture(speedInputs.value, atSpeed.value),
);

/** Name of the prediction that measurements are divided by; null: the first that can be computed. */
export const chosenYardstick = signal<string | null>(null);
export const yardsticks = computed(() => shownPredictions.value.filter(({ predictor }) => predictor !== null));
export const yardstick = computed(
  () =>
    yardsticks.value.find(({ prediction }) => prediction.name === chosenYardstick.value) ?? yardsticks.value[0] ?? null,
);
/** How the best measured variant compares with that prediction. */
export const beside = computed(() =>
  benchInputs.value === null ? "" : besidePrediction(bestOf(measured.value), yardstick.value, benchInputs.value),
);
const RESIDUALS: readonly ResidualOf[] = ["thrust", "shaftPower"];
export const residualAgainst = signal<ResidualAgainst>("rotationRate");
/** Whether a variant on show was run at speed, so that the advance ratio tells its points apart. */
export const hasRunsAtSpeed = computed(() =>
  measured.value.some(({ reductions }) => reductions.some(({ advance }) => advance !== null)),
);
export const residualCharts = computed(() => {
  const by = yardstick.value;
  const against = hasRunsAtSpeed.value ? residualAgainst.value : "rotationRate";
  return by === null ? [] : RESIDUALS.map((of) => residualPicture(measured.value, by, of, against));
});

/** What the stated numbers lead to, whatever was measured. */
export const following = computed(() => (inputs.value === null ? null : estimate(inputs.value)));
/** The same in one sentence. */
export const estimateNote = computed(() => following.value?.sentence ?? "");
