import { Grit, type SurfaceState } from "../../../../shared/model/surfaceState.ts";
import { surfaceOf } from "../../../../shared/propeller/finish/surfaceOf.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";

/** Roughness and lift factor of blades, and the state they were taken from; null where a person typed them. */
export interface SurfaceChoice {
  readonly state: SurfaceState | null;
  /** Null while the field is empty, m. */
  readonly roughness: number | null;
  readonly liftFactor: number | null;
}

export const SMOOTH: SurfaceChoice = { state: null, roughness: 0, liftFactor: 1 };

export type StateName = SurfaceState["state"];
export const STATE_NAMES: Readonly<Record<StateName, string>> = {
  printed: "As printed",
  sanded: "Sanded",
  filledAndSanded: "Filled and sanded",
  coated: "Coated with epoxy",
  machined: "Machined or moulded",
};

export const GRITS = Grit.options;

/** 20°: the pitch angle near 0.7 R of a propeller of pitch ratio 0.8. */
const USUAL_SLOPE = Math.PI / 9;
const USUAL_GRIT = "P400";
const STARTS: Readonly<Record<StateName, SurfaceState>> = {
  printed: { state: "printed", layerHeight: 0.2e-3, flow: "acrossLayers", slope: USUAL_SLOPE },
  sanded: { state: "sanded", grit: USUAL_GRIT },
  filledAndSanded: { state: "filledAndSanded", grit: USUAL_GRIT },
  coated: { state: "coated" },
  machined: { state: "machined" },
};

/** A state with the layer height and grit most have, to be changed. */
export function startOf(name: StateName): SurfaceChoice {
  return choiceOf(STARTS[name]);
}

/** The numbers of a state, to the three digits they deserve. */
export function choiceOf(state: SurfaceState): SurfaceChoice {
  const { roughness, liftFactor } = surfaceOf(state).surface;
  return { state, roughness: rounded(roughness), liftFactor: rounded(liftFactor) };
}

const rounded = (value: number) => Number(value.toPrecision(3));

const MICROMETRE = { symbol: "µm", factor: 1e-6 };

/** Where the numbers of a state come from, in two sentences. */
export function basisWords(state: SurfaceState): string {
  const { surface, roughnessBasis, liftFactorBasis } = surfaceOf(state);
  return (
    `Roughness ${formatQuantity(surface.roughness, MICROMETRE, 2)}: ${roughnessBasis}. ` +
    `Lift factor ${formatNumber(surface.liftFactor, 2)}: ${liftFactorBasis}.`
  );
}

/** The surface in a phrase: its state, else its roughness. */
export function surfaceWords({ state, roughness }: SurfaceChoice): string {
  if (state !== null) return surfaceOf(state).name;
  return roughness === null || roughness === 0 ? "smooth" : `roughness ${formatQuantity(roughness, MICROMETRE, 2)}`;
}
