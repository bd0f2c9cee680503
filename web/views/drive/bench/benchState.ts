import { computed } from "@preact/signals";
import { benchDifference } from "../../../../shared/drive/benchDifference.ts";
import { fluidProperties } from "../../../../shared/fluid/fluidProperties.ts";
import type { BenchDifference } from "../../../../shared/model/benchDifference.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { groups } from "../../variants/variantsState.ts";
import { motor, reynoldsCarried } from "../driveChoices.ts";
import { trains } from "../driveState.ts";
import type { PropellerInHand } from "../measuredPropeller.ts";

export interface AgainstBench {
  readonly inHand: PropellerInHand;
  readonly difference: BenchDifference;
  /** Why agreement may be no evidence; empty where it is. */
  readonly circular: string;
}

/** Plateaus of the chosen motor on the stand, beside what the model gives at the same rate and voltage. */
export const againstBench = computed((): { readonly rows: readonly AgainstBench[]; readonly problem: string } => {
  try {
    return { rows: trains.value.flatMap(compared), problem: "" };
  } catch (thrown) {
    return { rows: [], problem: sentenceOf(thrown) };
  }
});

function compared({ inHand, prepared }: (typeof trains.value)[number]): AgainstBench[] {
  const { stand, propeller } = inHand;
  const members = groups.value
    .find(({ name }) => name === inHand.name)
    ?.members.filter(({ run }) => run.recipe.motorId === motor.value?.id);
  if (stand === undefined || members === undefined || members.length === 0) return [];
  const readings = members.flatMap(({ reduction }) => reduction?.plateaus ?? []);
  const { ahead } = propeller;
  const onStand = {
    ...prepared.request,
    density: fluidProperties(stand.fluid).density,
    thrustCoefficient: ahead.thrustCoefficient.value,
    torqueCoefficient: ahead.torqueCoefficient.value,
    advanceSpeed: 0,
  };
  return [
    {
      inHand,
      difference: benchDifference(onStand, readings),
      circular:
        inHand.torqueSource === "motorConstants"
          ? "The torque coefficient of this propeller was worked out from these very readings and the motor's constants, so that it agrees is no evidence for either. A torque cell, or another motor on the same propeller, would be."
          : "",
    },
  ];
}

/** Thrust against electrical power: measured points, and the model at the voltages of the stand. */
export function benchPicture(rows: readonly AgainstBench[]): ChartSpec {
  return {
    title: "Thrust against electrical power, measured on the stand and by the model there",
    x: { label: "Electrical power", unit: "W", min: 0 },
    y: { label: "Thrust", unit: "N", min: 0 },
    series: rows.flatMap(({ inHand: { name, style }, difference: { points } }) => [
      {
        id: `measured-${name}`,
        name: `${name}, measured`,
        legend: name,
        kind: "measured" as const,
        style,
        points: points.map(({ thrust, measuredPower, ratio }) => ({
          x: measuredPower.value,
          y: thrust,
          xInterval: measuredPower.interval95,
          note: `${formatNumber(ratio.value, 3)} times the model`,
        })),
      },
      {
        id: `model-${name}`,
        name: `${name}, model`,
        legend: name,
        kind: "prediction" as const,
        style,
        points: [...points]
          .sort((a, b) => a.predictedPower - b.predictedPower)
          .map(({ thrust, predictedPower }) => ({ x: predictedPower, y: thrust })),
      },
    ]),
  };
}

export const carriedNote = computed(() =>
  reynoldsCarried.value ? "Compared in the fluid of the stand, with the coefficients as measured there." : "",
);
