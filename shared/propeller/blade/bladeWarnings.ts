import type { BladeElement } from "../../model/bladeElements.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { reynoldsWords } from "../reynoldsWords.ts";
import type { PolarTables } from "../section/polarTables.ts";
import { ROUGHEST } from "../section/sectionDrag.ts";
import type { BladeShape } from "./bladeShape.ts";
import { breadthWarnings } from "./breadthWarnings.ts";
import { beyondMomentum } from "./discFlow.ts";
import { polarWarnings } from "./polarWarnings.ts";
import { shareOf, UNREMARKABLE } from "./shareOfBlade.ts";

/** Below this nothing stands beside the section model to judge it by. */
const LEAST_REYNOLDS = 5e3;

interface WarnedFlow {
  /** V, m/s. */ readonly advanceSpeed: number;
  /** k_p, m. */ readonly roughness: number;
  /** Measured sections, where the model is not used. */ readonly polars: PolarTables | undefined;
}

/** What a reader must know of a solution by blade elements. */
export function bladeWarnings(
  shape: BladeShape,
  elements: readonly BladeElement[],
  { advanceSpeed, roughness, polars }: WarnedFlow,
): Warning[] {
  const middle = elements.reduce((near, element) =>
    Math.abs(element.radius - 0.35 * shape.diameter) < Math.abs(near.radius - 0.35 * shape.diameter) ? element : near,
  );
  return [
    ...ringWarnings(elements, advanceSpeed),
    ...breadthWarnings(shape),
    ...(polars
      ? polarWarnings(polars, { elements, middle, roughness })
      : [...reynoldsWarnings(middle), ...roughnessWarnings(shape, roughness)]),
  ];
}

function ringWarnings(elements: readonly BladeElement[], V: number): Warning[] {
  const share = shareOf(elements, ({ axialInduced }) => beyondMomentum(V, axialInduced));
  if (share <= UNREMARKABLE) return [];
  return [
    warning({
      code: "propeller.stream-opposed",
      where: "advanceSpeed",
      found: `Over ${formatPercent(share)} of the blade the stream that the propeller makes meets the one that comes towards it`,
      needed: "",
      mend: "Momentum theory has no answer there and an empirical line is used; thrust and torque are rough, and unsteady in the water",
    }),
  ];
}

function reynoldsWarnings({ reynolds }: BladeElement): Warning[] {
  if (reynolds >= LEAST_REYNOLDS) return [];
  return [
    warning({
      code: "propeller.reynolds-below-model",
      where: "rotationRate",
      found: `The Reynolds number of the blade at 0.7 of the radius is ${reynoldsWords(reynolds)}`,
      needed: `at least ${reynoldsWords(LEAST_REYNOLDS)}, the least the section model was held against`,
      mend: "Take the numbers as a rough guide",
    }),
  ];
}

function roughnessWarnings({ pieces }: BladeShape, roughness: number): Warning[] {
  const wide = pieces.reduce((sum, { chord, width }) => sum + chord * width, 0);
  const mean = wide / pieces.reduce((sum, { width }) => sum + width, 0);
  if (roughness * ROUGHEST <= mean) return [];
  return [
    warning({
      code: "propeller.rougher-than-line",
      where: "surface.roughness",
      found: `A roughness of ${formatNumber(roughness * 1e6, 3)} µm is more than 1/${ROUGHEST} of the mean chord`,
      needed: "grains that are small against the chord",
      mend: "The drag is held at that of 1/50; ridges so high change the shape of the section, so calibrate on a measurement",
    }),
  ];
}
