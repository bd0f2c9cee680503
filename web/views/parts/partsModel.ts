import { valueAt } from "../../../shared/model/parts/partValues.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { motorProblems } from "../../../shared/motor/motorProblems.ts";
import { type TableKind, tableFields } from "../../../shared/partsTable/tableFields.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { uncertain } from "../../../shared/quantity/uncertain.ts";
import { requireUnit } from "../../../shared/quantity/unit.ts";
import type { StoredParts } from "../../api/client.ts";
import { capitalised, counts, joined } from "../../app/words.ts";
import { textOf } from "../../forms/quantityText.ts";
import { shownNumber } from "./partDraft.ts";
import { fieldsOf, type PartField } from "./partFields.ts";

/** Kinds whose form is drawn from their schema; instruments have a form of their own. */
export type FormKind = TableKind;
export const KINDS: readonly FormKind[] = ["propellers", "motors", "controllers", "packs", "tethers", "gears"];

/** Kinds without which there is no operating point. */
const NEEDED: readonly FormKind[] = ["propellers", "motors", "packs"];

/** One and many, for headings and sentences. */
export const KIND_NAMES: Readonly<Record<FormKind, { readonly one: string; readonly many: string }>> = {
  propellers: { one: "propeller", many: "Propellers" },
  motors: { one: "motor", many: "Motors" },
  controllers: { one: "controller", many: "Controllers" },
  packs: { one: "pack", many: "Packs" },
  tethers: { one: "tether", many: "Tethers" },
  gears: { one: "gear", many: "Gears" },
};

/** What each kind is for, next to its heading. */
export const KIND_HINTS: Readonly<Record<FormKind, string>> = {
  propellers: "Measure the diameter over the tips with callipers; thrust coefficients go with its fourth power.",
  motors:
    "The speed constant and resistance make shaft power known where no torque was measured. Prefer your own measurements to a seller's page.",
  controllers: "Resistance between pack and motor; a few milliohm. Leave the limit empty where the maker states none.",
  packs:
    "Open-circuit voltage as charged, with the resistance of cells and leads. Keep to the maker's discharge limit.",
  tethers:
    "Diameter and weight in water tell what the cable drags; copper and length tell what it takes of the voltage.",
  gears: "Turns of the motor for one of the propeller. Leave it out where the propeller sits on the motor shaft.",
};

/** Values worth a column of their own, where any part has them; the others stand in the form. */
const COLUMNS: Readonly<Record<FormKind, readonly string[]>> = {
  propellers: [
    "diameter",
    "diameterUncertainty",
    "bladeCount",
    "pitchRatio",
    "chordAt07",
    "finish",
    "nozzle",
    "mass",
    "price",
  ],
  motors: [
    ...["speedConstant", "resistance", "noLoadCurrent", "polePairs"],
    ...["currentLimit", "powerLimit", "temperatureLimit", "mass", "price"],
  ],
  controllers: ["resistance", "currentLimit", "voltageLimit", "mass", "price"],
  packs: ["openCircuitVoltage", "cells.series", "charge", "resistance", "currentLimit", "fuseCurrent", "mass", "price"],
  tethers: ["diameter", "conductor.length", "currentLimit", "weightInWater", "strength", "price"],
  gears: ["ratio", "efficiency", "mass", "price"],
};

export interface PartColumn {
  readonly key: string;
  readonly label: string;
  readonly symbol: string;
}

export interface PartRow {
  readonly id: string;
  readonly name: string;
  /** One text for each column; empty where nothing is known. */
  readonly cells: readonly string[];
  readonly note: string;
  /** Where it is in use: "2 runs". */
  readonly use: string;
  /** What looks implausible, whole sentences. */
  readonly doubts: readonly { readonly code: string; readonly message: string }[];
}

export interface PartList {
  readonly kind: FormKind;
  readonly heading: string;
  readonly columns: readonly PartColumn[];
  readonly rows: readonly PartRow[];
}

export interface PartsModel {
  readonly answer: string;
  readonly tone: "known" | "open";
  readonly lists: readonly PartList[];
}

export function partsModel(parts: StoredParts, runs: readonly StoredDocument<Run>[]): PartsModel {
  const missing = NEEDED.filter((kind) => parts[kind].length === 0);
  return {
    answer: answerOf(parts, missing),
    tone: missing.length === 0 ? "known" : "open",
    lists: KINDS.map((kind) => listOf(kind, parts, runs)),
  };
}

function answerOf(parts: StoredParts, missing: readonly FormKind[]): string {
  const counted = KINDS.filter((kind) => parts[kind].length > 0).map((kind) =>
    counts(parts[kind].length, KIND_NAMES[kind].one),
  );
  const wanted = missing.map((kind) => `a ${KIND_NAMES[kind].one}`);
  if (counted.length === 0)
    return "No parts yet. Add the propeller you measured first; motor and pack turn coefficients into thrust and current.";
  const have = `${joined(counted)} on the shelf`;
  return wanted.length === 0
    ? `${have}: all that an operating point needs.`
    : `${have}. Add ${joined(wanted)} to see bollard thrust and current.`;
}

function listOf(kind: FormKind, parts: StoredParts, runs: readonly StoredDocument<Run>[]): PartList {
  const stored = parts[kind] as readonly StoredDocument<Readonly<Record<string, unknown>>>[];
  const heads = new Map(tableFields(kind).map(({ key, head }) => [key, capitalised(head)]));
  const fields = COLUMNS[kind].map((key) => fieldsOf(kind).find((field) => field.key === key)!);
  // A column that no part fills would only widen the table.
  const filled = fields.filter(
    ({ key, optional }) => !optional || stored.some(({ document }) => told(valueAt(document, key))),
  );
  return {
    kind,
    heading: KIND_NAMES[kind].many,
    columns: filled.map((field) => ({
      key: field.key,
      label: heads.get(field.key)!,
      symbol: "symbol" in field ? field.symbol : "",
    })),
    rows: stored.map(({ id, document }) => ({
      id,
      name: String(document["name"]),
      cells: filled.map((field) =>
        cellOf(field, valueAt(document, field.key), valueAt(document, `uncertainties.${field.key}`)),
      ),
      note: String(document["note"] ?? ""),
      use: useOf(kind, id, runs),
      doubts: doubtsOf(kind, document, parts),
    })),
  };
}

const told = (value: unknown) => value !== undefined && value !== "" && value !== false && value !== 0;

function cellOf(field: PartField, value: unknown, doubt: unknown): string {
  if (value === undefined || value === "") return "";
  if (typeof doubt === "number" && (field.kind === "quantity" || field.kind === "scaled")) {
    const factor = field.kind === "scaled" ? field.factor : requireUnit(field.unit, field.dimension).factor;
    return formatUncertain(uncertain(value as number, doubt), { symbol: field.unit, factor });
  }
  if (field.kind === "quantity") return textOf(value as number, field.dimension, field.unit);
  if (field.key === "price") return String(Number((value as number).toFixed(2)));
  if (field.kind === "scaled") return shownNumber(value as number, field);
  if (field.kind === "yesNo") return value ? "yes" : "no";
  return String(value);
}

function useOf(kind: FormKind, id: string, runs: readonly StoredDocument<Run>[]): string {
  const uses: Readonly<Record<FormKind, (run: Run) => string | undefined>> = {
    propellers: ({ propellerId }) => propellerId,
    motors: ({ recipe }) => recipe.motorId,
    controllers: ({ recipe }) => recipe.controllerId,
    packs: () => undefined,
    tethers: () => undefined,
    gears: () => undefined,
  };
  const count = runs.filter(({ document }) => uses[kind](document) === id).length;
  return count === 0 ? "" : counts(count, "run");
}

function doubtsOf(kind: FormKind, document: Readonly<Record<string, unknown>>, parts: StoredParts): PartRow["doubts"] {
  if (kind !== "motors") return [];
  const motor = document as unknown as StoredParts["motors"][number]["document"];
  return motorProblems(motor, parts.packs[0]?.document.openCircuitVoltage);
}
