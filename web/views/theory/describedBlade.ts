import type { DescribedBlade, MeasuredPoint } from "../../../shared/model/finishFit.ts";
import type { Propeller } from "../../../shared/model/parts.ts";
import type { Subject } from "./subject.ts";

/** The blades of a propeller for blade elements: its shape, else a series outline of its pitch, blades and chord; else what is missing, in words. */
export function describedBlade({
  name,
  geometry,
  diameter,
  bladeCount,
  pitchRatio,
  chordAt07,
}: Propeller): { readonly blade: DescribedBlade } | { readonly missing: string } {
  if (geometry !== undefined) return { blade: { given: "geometry", geometry } };
  if (bladeCount === undefined || pitchRatio === undefined || chordAt07 === undefined || bladeCount < 2)
    return {
      missing: `Add the blade shape of ${name} on the Parts screen, or at least number of blades, pitch ratio and chord at 0.7 R.`,
    };
  return { blade: { given: "outline", outline: { diameter, bladeCount, pitchRatio, chordAt07 } } };
}

/** K_T and K_Q at bollard of a variant as the blade models take them; null where no shaft power is known. */
export function measuredPoint({ thrustCoefficient, torqueCoefficient, reductions }: Subject): MeasuredPoint | null {
  if (torqueCoefficient === null || torqueCoefficient.value <= 0) return null;
  const [first] = reductions;
  const common = (share: number, of: typeof thrustCoefficient) => Math.min(share * of.value, of.standardUncertainty);
  const share = (
    fit: { readonly commonUncertainty: number; readonly coefficient: { readonly value: number } } | null | undefined,
  ) => (fit ? fit.commonUncertainty / fit.coefficient.value : 0);
  const point = (of: typeof thrustCoefficient, part: number) => ({
    value: of.value,
    standardUncertainty: Math.max(of.standardUncertainty, Number.MIN_VALUE),
    commonUncertainty: common(part, of),
  });
  return {
    advanceRatio: 0,
    thrustCoefficient: point(thrustCoefficient, share(first?.thrustFit)),
    torqueCoefficient: point(torqueCoefficient, share(first?.powerFit)),
    correlation: 0,
  };
}
