import { computed } from "@preact/signals";
import { partOf } from "../../app/session.ts";
import { predictions } from "../theory/predictions/predictionsState.ts";
import { freeStyle, type VariantRuns } from "../variants/variantGroups.ts";
import { allGroups, groups } from "../variants/variantsState.ts";
import { ofSeries, typedPropeller } from "./computedPropellers.ts";
import { brought, statedMerit, typed } from "./driveChoices.ts";
import { measuredPropeller, type PropellerInHand } from "./measuredPropeller.ts";

/** Variants on show, and the propeller that was typed. */
export const propellers = computed((): PropellerInHand[] => [
  ...measured(groups.value, statedMerit.value),
  ...typedOnes(freeStyle(groups.value)),
  ...broughtOnes(freeStyle(groups.value) + 1),
]);

/** Every propeller whose coefficients are known: all variants, the series among the predictions, the typed one. */
export const drivePropellers = computed((): PropellerInHand[] => {
  const style = freeStyle(allGroups.value);
  return [
    ...measured(allGroups.value, statedMerit.value),
    ...predictions.value.flatMap((prediction, at) => ofSeries(prediction, style + 1 + at)),
    ...typedOnes(style),
  ];
});

function measured(all: readonly VariantRuns[], merit: number): PropellerInHand[] {
  return all.flatMap((group) => {
    const part = partOf("propellers", group.members[0]?.run.propellerId)?.document;
    return measuredPropeller({ group, merit, part }) ?? [];
  });
}

function typedOnes(style: number): PropellerInHand[] {
  return typed.value === null ? [] : [typedPropeller(typed.value, statedMerit.value, style)];
}

function broughtOnes(style: number): PropellerInHand[] {
  const propeller = brought.value;
  return propeller === null
    ? []
    : [{ name: propeller.name, style, propeller, torqueSource: propeller.source, runs: 0 }];
}
