import { ShapeItem, type ShapeKind } from "../../../../../shared/model/vehicle/dragShapes.ts";
import { SHAPE_KINDS } from "./shapeKinds.ts";

/** A shape that is being typed: values by the key of the document; null for an empty field. */
export interface ShapeDraft {
  readonly kind: ShapeKind;
  readonly values: Readonly<Record<string, number | string | null>>;
}

const NEW: ShapeDraft["values"] = { name: "", count: 1, exposedShare: 1, interferenceFactor: 1 };
const USUAL_DOUBT = 0.1;

export const draftOf = (item: ShapeItem | null): ShapeDraft => {
  if (item === null) return { kind: "crossCylinder", values: { ...NEW, ends: "free" } };
  const { kind, ...values } = item;
  return { kind, values: values as ShapeDraft["values"] };
};

/** The same part as another kind of shape: sizes of the same name stay. */
export function withKind({ values }: ShapeDraft, kind: ShapeKind): ShapeDraft {
  const first = (SHAPE_KINDS[kind].choices ?? []).map(({ key, options }) => [key, options[0]!.value] as const);
  const doubt = kind === "stated" ? { relativeUncertainty: values["relativeUncertainty"] ?? USUAL_DOUBT } : {};
  return { kind, values: { ...Object.fromEntries(first), ...values, ...doubt } };
}

export const withValue = (draft: ShapeDraft, key: string, value: number | string | null): ShapeDraft => ({
  ...draft,
  values: { ...draft.values, [key]: value },
});

const KEPT = ["name", "count", "exposedShare", "interferenceFactor", "note"];

/** The shape of the document, or what is missing. */
export function shapeOf({ kind, values }: ShapeDraft): { readonly item: ShapeItem } | { readonly missing: string } {
  const { sizes, choices = [] } = SHAPE_KINDS[kind];
  if (String(values["name"] ?? "").trim() === "") return { missing: "Needed: a name, what it is on the vehicle." };
  const empty = sizes.find(({ key, optional }) => !optional && (values[key] ?? null) === null);
  if (empty) return { missing: `Needed: ${empty.label.toLowerCase()}.` };
  const keys = [...KEPT, ...sizes.map(({ key }) => key), ...choices.map(({ key }) => key), "source"];
  const filled = keys.flatMap((key) => {
    const value = values[key] ?? null;
    return value === null || (key === "source" && kind !== "stated") ? [] : [[key, value] as const];
  });
  const read = ShapeItem.safeParse({ kind, ...Object.fromEntries(filled) });
  return read.success ? { item: read.data } : { missing: `Look again at ${read.error.issues[0]!.path.join(" ")}.` };
}
