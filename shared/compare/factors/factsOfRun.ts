import type { RunFacts } from "../../model/factor.ts";
import type { InstrumentRole } from "../../model/instrument.ts";
import type { Propeller } from "../../model/parts/propeller.ts";
import type { ChannelCorrection } from "../../model/recipe.ts";
import type { Run } from "../../model/run.ts";
import { formatNumber } from "../../quantity/format.ts";
import { inWords } from "../inWords.ts";

/** The parts of a run that are there, by name where the name is all that counts. */
export interface PartsOfRun {
  readonly propeller?: Propeller | undefined;
  readonly motor?: string | undefined;
  readonly controller?: string | undefined;
  readonly pack?: string | undefined;
  readonly instruments?: { readonly [R in InstrumentRole]?: string };
}

/** What is known of a stored run beside its log. */
export function factsOfRun(id: string, run: Run, parts: PartsOfRun): RunFacts {
  const { propeller } = parts;
  const { fluid, stand } = run.recipe;
  const known = {
    propeller: propeller?.name,
    finish: propeller?.finish,
    material: propeller?.material,
    pitchRatio: propeller?.pitchRatio,
    diameter: propeller?.diameter,
    bladeCount: propeller?.bladeCount,
    nozzle: propeller?.nozzle,
    layerHeight: propeller?.layerHeight,
    roughness: propeller?.roughness,
    motor: parts.motor,
    controller: parts.controller,
    pack: parts.pack,
    day: run.day,
    instruments: instrumentsOf(run, parts),
    immersion: stand?.shaftImmersion,
    fluid,
  };
  const { name, variant, mounting, tags = [] } = run;
  return { id, name, variant, mounting, tags: [...tags], ...stated(known) };
}

type Stated<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

/** Without the keys that have no value, as the documents want it. */
function stated<T extends object>(record: T): Stated<T> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Stated<T>;
}

/** Instruments by name, and corrections that were typed; runs without either took the readings as they are. */
function instrumentsOf({ recipe: { corrections } }: Run, { instruments = {} }: PartsOfRun): string {
  const named = Object.entries(instruments).map(([role, name]) => `${role} ${name}`);
  const typed = Object.entries(corrections)
    .filter(([role]) => !(role in instruments))
    .map(([role, correction]) => `${role} ${correctionInWords(correction)}`);
  const all = [...named, ...typed].sort();
  return all.length === 0 ? "readings as they are" : inWords(all).slice(0, 200);
}

function correctionInWords({ factor, offset }: ChannelCorrection): string {
  return `× ${formatNumber(factor, 5)}${offset === 0 ? "" : ` after ${formatNumber(offset, 5)} was taken off`}`;
}
