import { leafRefusal } from "../../../shared/model/parts/leafRefusal.ts";
import { leavesOf, type PartLeaf } from "../../../shared/model/parts/partLeaves.ts";
import { requireUnit } from "../../../shared/quantity/unit.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";
import { FIELD_HELP } from "./fieldHelp.data.ts";
import type { FormKind } from "./partsModel.ts";

interface Shared {
  readonly key: string;
  readonly label: string;
  /** It may stay empty, at least until other values of its group are filled in. */
  readonly optional: boolean;
  /** How to come by the value. */
  readonly help: string | undefined;
  /** What the schema says is wrong with a value, or null. */
  readonly check: (value: unknown) => string | null;
  readonly leaf: PartLeaf;
}

/** One field of a form, as the schema of the part describes it. */
export type PartField = Shared &
  (
    | { readonly kind: "quantity"; readonly symbol: string; readonly dimension: Dimension; readonly unit: string }
    | { readonly kind: "scaled"; readonly symbol: string; readonly unit: string; readonly factor: number }
    | { readonly kind: "count" }
    | { readonly kind: "yesNo" }
    | { readonly kind: "words"; readonly lines: number; readonly maxLength: number }
    | { readonly kind: "list" }
  );

/** Labels where the words of the schema are too long for a form, or there are none. */
const LABELS: Readonly<Record<string, string>> = {
  name: "Name",
  note: "Note",
  finish: "Surface finish",
  material: "Material",
  nozzle: "Runs in a nozzle",
  price: "Price",
  resistanceTemperature: "Winding temperature of that resistance",
  freewheelVoltage: "Freewheel voltage",
  switchingLoss: "Switching loss",
  standbyPower: "Power drawn by itself",
  "command.deadBand": "Dead band on either side",
  "command.fullReverse": "Pulse of full throttle astern",
  "cells.statedCharge": "Charge left at that voltage",
  "cells.curve": "Voltage of one cell against charge",
  leastVoltage: "Least voltage under load",
  weightInWater: "Weight in water over length",
  "lead.size.resistancePerLength": "Resistance of one conductor, 20 °C",
  "conductor.size.resistancePerLength": "Resistance of one conductor, 20 °C",
};

const NOTE_LENGTH = 4000;

/** Parts of a document that have a panel of their own and are kept as they are by the form. */
export const KEPT_ASIDE: readonly string[] = ["geometry"];

/** Found together by a computation, never typed. */
const NOT_TYPED: readonly string[] = ["uncertainties.correlations"];

/** The fields of a kind of part, in the order of its schema; those of a document inside it are "outer.inner". */
export function fieldsOf(kind: FormKind): PartField[] {
  return leavesOf(kind)
    .filter(({ key }) => !KEPT_ASIDE.includes(key) && !NOT_TYPED.includes(key))
    .map((leaf) => fieldOf(leaf, FIELD_HELP[`${kind}:${leaf.key}`] ?? FIELD_HELP[leaf.key]));
}

function fieldOf(leaf: PartLeaf, help: string | undefined): PartField {
  const { key, type, schema, symbol, unit, written } = leaf;
  const label = LABELS[key] ?? leaf.text;
  const optional = leaf.optional || key.includes(".");
  const shared = {
    key,
    label,
    optional,
    help,
    check: (value: unknown) => leafRefusal(schema, value),
    leaf,
  };
  if (type === "yesNo") return { ...shared, kind: "yesNo" };
  if (type === "list") return { ...shared, kind: "list" };
  if (type === "text") {
    const long = key === "note";
    return { ...shared, kind: "words", lines: long ? 3 : 1, maxLength: long ? NOTE_LENGTH : 120 };
  }
  if (written?.dimension === "currentPerAngularVelocity")
    return {
      ...shared,
      kind: "scaled",
      symbol,
      unit: written.unit,
      factor: requireUnit(written.unit, written.dimension).factor,
    };
  if (written !== null) return { ...shared, kind: "quantity", symbol, ...written };
  // One unit only, which no one types: it stands beside the number.
  return unit === "" ? { ...shared, kind: "count" } : { ...shared, kind: "scaled", symbol, unit, factor: 1 };
}
