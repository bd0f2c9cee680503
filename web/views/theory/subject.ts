import { computed, signal } from "@preact/signals";
import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { partOf } from "../../app/session.ts";
import { reductionsOf } from "../variants/variantGroups.ts";
import { meanStaticMerit, meanThrustCoefficient, meanTorqueCoefficient } from "../variants/variantMean.ts";
import { groups } from "../variants/variantsState.ts";

/** The measured variant that the cards below the pictures speak of. */
export interface Subject {
  readonly name: string;
  readonly propeller: Propeller;
  readonly reductions: readonly Reduction[];
  readonly thrustCoefficient: Uncertain;
  /** Null where no shaft power is known. */
  readonly torqueCoefficient: Uncertain | null;
  readonly staticMerit: Uncertain | null;
  /** Greatest rotation rate that was measured, to the nearest 10 rpm, rev/s. */
  readonly topRate: number;
}

/** To the nearest 10 rpm: a round number to begin with. */
export function wholeRate(rate: number): number {
  return Math.max(1, Math.round(rate * 6)) / 6;
}

const chosenName = signal<string | null>(null);

export function chooseSubject(name: string): void {
  chosenName.value = name;
}

/** Variants on show whose propeller and thrust coefficient are known. */
export const subjects = computed((): Subject[] =>
  groups.value.flatMap((group) => {
    const reductions = reductionsOf(group);
    const propeller = group.members
      .map(({ run }) => partOf("propellers", run.propellerId)?.document)
      .find((document) => document !== undefined);
    const thrustCoefficient = meanThrustCoefficient(reductions);
    if (propeller === undefined || thrustCoefficient === null || thrustCoefficient.value <= 0) return [];
    const rates = reductions.flatMap(({ plateaus }) => plateaus.map(({ rotationRate }) => rotationRate.value));
    const torqueCoefficient = meanTorqueCoefficient(reductions);
    return [
      {
        name: group.name,
        propeller,
        reductions,
        thrustCoefficient,
        torqueCoefficient,
        staticMerit: meanStaticMerit(reductions),
        topRate: wholeRate(Math.max(...rates)),
      },
    ];
  }),
);

/** The chosen one, else the one that pushes most. */
export const subject = computed((): Subject | null => {
  const all = subjects.value;
  const chosen = all.find(({ name }) => name === chosenName.value);
  const most = (a: Subject, b: Subject) => (b.thrustCoefficient.value > a.thrustCoefficient.value ? b : a);
  return chosen ?? (all.length === 0 ? null : all.reduce(most));
});
