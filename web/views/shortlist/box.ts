import type { DrivePropeller } from "../../../shared/model/drivePropeller.ts";
import type { PartKind } from "../../../shared/model/parts/partKinds.ts";
import type { PartsBoxInput, SeriesToTry } from "../../../shared/model/shortlist.ts";
import type { StoredParts } from "../../api/client.ts";
import { counts } from "../../app/words.ts";

export type BoxKind = Extract<PartKind, "motors" | "controllers" | "packs" | "tethers" | "gears">;

/** What of the project goes into the search, and what is tried besides. */
export interface BoxChoices {
  /** Ids of parts, and names of propellers, that are left out. */
  readonly leftOut: ReadonlySet<string>;
  readonly directDrive: boolean;
  /** The packs feed through a tether. */
  readonly throughTether: boolean;
  /** Diameters that the propellers are scaled to, m. */
  readonly scaleTo: readonly number[];
  readonly series: readonly SeriesToTry[];
}

export const NOTHING_LEFT_OUT: BoxChoices = {
  leftOut: new Set(),
  directDrive: true,
  throughTether: false,
  scaleTo: [],
  series: [],
};

/** The parts box that is searched. */
export function boxOf(parts: StoredParts, propellers: readonly DrivePropeller[], choices: BoxChoices): PartsBoxInput {
  const taken = <T>(stored: readonly { readonly id: string; readonly document: T }[]): T[] =>
    stored.filter(({ id }) => !choices.leftOut.has(id)).map(({ document }) => document);
  return {
    motors: taken(parts.motors),
    controllers: taken(parts.controllers),
    withoutController: parts.controllers.length === 0,
    packs: taken(parts.packs),
    tethers: choices.throughTether ? taken(parts.tethers).filter(({ conductor }) => conductor !== undefined) : [],
    gears: taken(parts.gears),
    directDrive: choices.directDrive,
    propellers: propellers.filter(({ name }) => !choices.leftOut.has(name)),
    scaleTo: [...choices.scaleTo],
    series: [...choices.series],
  };
}

/** "2 motors × 1 controller × 3 supplies × 6 propellers × 1 gear = 36 combinations" */
export function sizeText(box: PartsBoxInput): string {
  const count = (list: readonly unknown[] | undefined) => list?.length ?? 0;
  const controllers = count(box.controllers) + (box.withoutController ? 1 : 0);
  const supplies = count(box.supplies) + count(box.packs) * Math.max(1, count(box.tethers));
  const tried = (box.series ?? []).reduce(
    (sum, { pitchRatios, diameters }) => sum + pitchRatios.length * diameters.length,
    0,
  );
  const propellers = count(box.propellers) * (1 + count(box.scaleTo)) + tried;
  const gears = count(box.gears) + (box.directDrive === false ? 0 : 1);
  const all = count(box.motors) * controllers * supplies * propellers * gears;
  const words = [
    counts(count(box.motors), "motor"),
    box.withoutController && controllers === 1 ? "no controller kept" : counts(controllers, "controller"),
    `${supplies} ${supplies === 1 ? "supply" : "supplies"}`,
    counts(propellers, "propeller"),
    gears === 1 && count(box.gears) === 0 ? "direct drive" : `${gears} ${gears === 1 ? "gearing" : "gearings"}`,
  ];
  return `${words.join(" × ")} = ${all.toLocaleString("en").replaceAll(",", "\u202f")} combinations`;
}
