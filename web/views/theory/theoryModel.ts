import type { BollardDuty } from "../../../shared/model/bollardEstimate.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { bollardEstimate, limitThrust, type WorkingDisc } from "../../../shared/propeller/bollardEstimate.ts";
import { formatNumber, formatQuantity } from "../../../shared/quantity/format.ts";
import type { Uncertain } from "../../../shared/quantity/uncertain.ts";
import { AMPERE, KILOGRAM_FORCE, MILLIMETRE, NEWTON, NEWTON_PER_WATT, VOLT, WATT } from "../bench/shownUnits.ts";
import { bestOf, closeness } from "./closeness/closenessModel.ts";

/** Least and greatest stated merit of the slider; real small propellers lie well inside. */
export const MERIT_RANGE = { low: 0.2, high: 0.9, step: 0.01 } as const;

/** What a person states on this screen: everything the prediction follows from. */
export interface TheoryInputs extends WorkingDisc {
  readonly staticMerit: number;
  /** Shaft power over electrical power; a stated share of what motor and controller pass on. */
  readonly driveEfficiency: number;
  /** Supply voltage that the current is worked out at, V. */
  readonly voltage: number;
  readonly duty: BollardDuty;
  /** The diameter is nobody's: an example, until one is stated or measured. */
  readonly isExample?: boolean;
}

/** A variant that has been measured, with the static merit of all its runs where power is known. */
export interface MeasuredVariant {
  readonly name: string;
  /** Style number shared by everything drawn of this variant. */
  readonly style: number;
  readonly reductions: readonly Reduction[];
  readonly staticMerit: Uncertain | null;
  /** Its propeller works in a nozzle; where absent, as the disc that is stated. */
  readonly nozzle?: boolean;
}

/**
 * Diameter and density behind the measured points, so that their limit is told for the same disc. Of several it is the
 * one with the highest limit, which no honest point of the others can pass either; nothing where nothing was measured.
 */
export function benchDisc(variants: readonly MeasuredVariant[]): Partial<Pick<WorkingDisc, "diameter" | "density">> {
  const discs = variants.flatMap(({ reductions }) =>
    reductions.map(({ diameter, fluid }) => ({ diameter: diameter.value, density: fluid.density })),
  );
  const limit = (disc: (typeof discs)[number]) => limitThrust(1, { ...disc, nozzleAreaRatio: null });
  return discs.length === 0 ? {} : discs.reduce((a, b) => (limit(b) > limit(a) ? b : a));
}

/** One sentence: how close the best measured variant comes; or what is missing for an answer. */
export function theoryAnswer(variants: readonly MeasuredVariant[], inputs: TheoryInputs): string {
  const best = bestOf(variants);
  if (best === null)
    return variants.every(({ reductions }) => reductions.length === 0)
      ? nothingMeasured(inputs)
      : "The measured runs give thrust but no shaft power, so how close they come is not known; the prediction follows from the stated merit.";
  return `${closeness(best, inputs)}${best.reductions.length === 1 ? " One mounting only." : ""}`;
}

function nothingMeasured({ isExample, diameter }: TheoryInputs): string {
  const alone = "No run has been reduced yet; the prediction below follows from the stated merit alone";
  if (!isExample) return `${alone}.`;
  return `${alone}, for an example disc of ${formatQuantity(diameter, MILLIMETRE)}: state the diameter of your propeller.`;
}

export interface Estimate {
  readonly rows: readonly { readonly name: string; readonly value: string; readonly how: string }[];
  readonly sentence: string;
  /** What the stated merit can not be, in a sentence; empty when it is possible. */
  readonly caution: string;
}

/** Power, current and thrust that follow from the stated merit. Exact consequences of stated numbers, so without interval. */
export function estimate(inputs: TheoryInputs): Estimate {
  const { staticMerit, voltage, duty } = inputs;
  const found = bollardEstimate(inputs);
  const thrustText = `${formatQuantity(found.thrust, NEWTON)} (${formatQuantity(found.thrust, KILOGRAM_FORCE)})`;
  const current = formatQuantity(found.electricalPower / voltage, AMPERE);
  const byThrust = duty.given === "thrust";
  const disc = inputs.isExample ? `, on an example disc of ${formatQuantity(inputs.diameter, MILLIMETRE)},` : ",";
  return {
    rows: [
      { name: "Bollard thrust", value: thrustText, how: byThrust ? "stated" : "from shaft power and merit" },
      {
        name: "Ideal thrust at this power",
        value: formatQuantity(found.idealThrust, NEWTON),
        how: "momentum limit",
      },
      {
        name: "Shaft power",
        value: formatQuantity(found.shaftPower, WATT),
        how: byThrust ? "ideal power over merit" : "electrical power × efficiency",
      },
      {
        name: "Electrical power",
        value: formatQuantity(found.electricalPower, WATT),
        how: duty.given === "electricalPower" ? "stated" : "shaft power over efficiency",
      },
      { name: "Supply current", value: current, how: `at ${formatQuantity(voltage, VOLT)}` },
      {
        name: "Thrust over electrical power",
        value: formatQuantity(found.thrustPerPower, NEWTON_PER_WATT),
        how: "falls as the thrust grows",
      },
    ],
    sentence:
      `With a static merit of ${formatNumber(staticMerit, 2)}${disc} ${thrustText} takes ` +
      `${formatQuantity(found.electricalPower, WATT)} and ${current} at ${formatQuantity(voltage, VOLT)}.`,
    caution: found.warnings.map(({ message }) => message).join(" "),
  };
}
