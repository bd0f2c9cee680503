import { type RunQuantity, staticMeritOf } from "../../../shared/compare/runQuantity.ts";
import { variantSummary } from "../../../shared/compare/variantSummary.ts";
import type { CoefficientFit, Reduction } from "../../../shared/model/reduction.ts";
import { scaled, type Uncertain } from "../../../shared/quantity/uncertain.ts";

/** Mean of the thrust coefficients of a variant's mountings; null without runs. */
export function meanThrustCoefficient(reductions: readonly Reduction[]): Uncertain | null {
  return reductions.length === 0 ? null : variantSummary({ name: "", reductions }).thrustCoefficient;
}

/** The same of the torque coefficients, over the mountings whose shaft power is known; null where there is none. */
export function meanTorqueCoefficient(reductions: readonly Reduction[]): Uncertain | null {
  const known = reductions.flatMap((run) => {
    const { powerFit, powerCoefficient, torqueCoefficient } = run;
    if (powerFit === null || powerCoefficient === null || torqueCoefficient === null) return [];
    const perPower = torqueCoefficient.value / powerCoefficient.value;
    return [{ run, coefficient: torqueCoefficient, fit: scaledFit(powerFit, perPower) }];
  });
  return meanOf(known);
}

/** The same of the static merit. */
export function meanStaticMerit(reductions: readonly Reduction[]): Uncertain | null {
  const known = reductions.flatMap((run) =>
    run.staticMerit === null ? [] : [{ run, coefficient: run.staticMerit, fit: meritFit(run, run.staticMerit) }],
  );
  return meanOf(known);
}

interface Stated {
  readonly run: Reduction;
  readonly coefficient: Uncertain;
  readonly fit: CoefficientFit;
}

/** `variantSummary` averages what stands in the place of the thrust fit, so other coefficients are put there. */
function meanOf(known: readonly Stated[]): Uncertain | null {
  return meanThrustCoefficient(
    known.map(({ run, coefficient, fit }) => ({ ...run, thrustCoefficient: coefficient, thrustFit: fit })),
  );
}

function scaledFit(fit: CoefficientFit, factor: number): CoefficientFit {
  return {
    ...fit,
    coefficient: scaled(fit.coefficient, factor),
    independentUncertainty: fit.independentUncertainty * factor,
    commonUncertainty: fit.commonUncertainty * factor,
    components: fit.components.map((one) => ({ ...one, standardUncertainty: one.standardUncertainty * factor })),
  };
}

function meritFit(run: Reduction, merit: Uncertain): CoefficientFit {
  const { independent, degreesOfFreedom, common }: RunQuantity = staticMeritOf(run);
  const components = [...common].map(([key, effect]) => ({
    key,
    name: key,
    standardUncertainty: Math.abs(effect) * merit.value,
  }));
  return {
    ...run.thrustFit,
    coefficient: merit,
    independentUncertainty: independent * merit.value,
    commonUncertainty: Math.hypot(...components.map((one) => one.standardUncertainty)),
    components,
    degreesOfFreedom,
  };
}
