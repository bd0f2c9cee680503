import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { DescribedBlade, ModelUncertainty } from "../../model/finishFit.ts";
import type { Warning } from "../../quantity/warning.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";
import { genericBlade } from "./genericBlade.ts";
import { type SeriesTie, seriesTie } from "./seriesTie.ts";

/** Blades ready to compute with, and how far blade elements may be off for them. */
export interface BladesInHand {
  readonly geometry: BladeGeometry;
  readonly tie: SeriesTie;
  readonly model: ModelUncertainty;
  /** The sections were not measured: a generic outline stands for them. */
  readonly isGeneric: boolean;
  readonly warnings: readonly Warning[];
}

/** What an outline in place of measured sections adds to the doubt of K_T and K_Q. Common practice, no source. */
const OUTLINE_DOUBT = { thrust: 0.08, torque: 0.1 } as const;

/** The blades of a request: measured sections, or those a generic outline stands for. Throws as `genericBlade`. */
export function bladesInHand({
  blade,
  modelUncertainty,
}: {
  readonly blade: DescribedBlade;
  readonly modelUncertainty: ModelUncertainty;
}): BladesInHand {
  if (blade.given === "geometry") {
    const geometry = checkedGeometry(blade.geometry);
    return { geometry, isGeneric: false, ...seriesTie(geometry, modelUncertainty) };
  }
  const { geometry, warning } = genericBlade(blade.outline);
  const { tie, model, warnings } = seriesTie(geometry, modelUncertainty);
  const wider = {
    thrust: Math.hypot(model.thrust, OUTLINE_DOUBT.thrust),
    torque: Math.hypot(model.torque, OUTLINE_DOUBT.torque),
  };
  return { geometry, tie, model: wider, isGeneric: true, warnings: [warning, ...warnings] };
}
