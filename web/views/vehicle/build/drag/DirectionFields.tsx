import { useState } from "preact/hooks";
import type { DirectionDrag, DragSource } from "../../../../../shared/model/vehicle/drag.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { without } from "../buildModel.ts";
import { FitDialog } from "../fit/FitDialog.tsx";
import { FittedDrag } from "../fit/FittedDrag.tsx";
import { KeptQuantity } from "../KeptQuantity.tsx";
import { KeptText } from "../KeptText.tsx";
import { type DragWay, givenDrag, resolvedDrag, withDrag, withoutDrag, wordsOf } from "./directions.ts";
import { editDrag, resolved } from "./dragState.ts";
import { ShapesFields } from "./ShapesFields.tsx";
import { FIRST_SHAPE } from "./shapeKinds.ts";

type From = DragSource["from"] | "none";

interface DirectionFieldsProps {
  readonly build: VehicleBuild;
  readonly way: DragWay;
}

/** How the drag of one motion is known: typed, built up from shapes, or fitted to a log. */
export function DirectionFields({ build, way }: DirectionFieldsProps) {
  const [fitting, setFitting] = useState(false);
  const { label, like } = wordsOf(way);
  const given = givenDrag(build.drag, way);
  const what = `drag ${label.toLowerCase()}`;
  const keep = (source: DragSource) =>
    editDrag((drag) => withDrag(drag, way, { ...givenDrag(drag, way), drag: source }), what);
  const choose = (from: From) => {
    if (from === "none") return editDrag((drag) => withoutDrag(drag, way), `no ${what}`);
    if (from === "fitted") return given?.drag.from === "fitted" ? undefined : setFitting(true);
    return given?.drag.from === from ? undefined : keep(startOf(from, way));
  };
  const from = given?.drag.from ?? "none";
  return (
    <>
      <div class="build-one">
        <SelectField
          label="Its drag is"
          value={from}
          options={[
            { value: "none", label: like ? `as ${wordsOf(like).label.toLowerCase()}` : "not given" },
            { value: "typed", label: "typed" },
            { value: "shapes", label: "built up from shapes" },
            { value: "fitted", label: "fitted to a tow, a coast-down, timed runs or a dive" },
          ]}
          onChange={choose}
        />
      </div>
      {given?.drag.from === "typed" && <TypedFields source={given.drag} keep={keep} />}
      {given?.drag.from === "shapes" && <ShapesFields source={given.drag} way={way} keep={keep} />}
      {given?.drag.from === "fitted" && (
        <FittedDrag data={given.drag.data} way={way} onChange={() => setFitting(true)} />
      )}
      {given && <LinearField given={given} way={way} what={what} />}
      {fitting && (
        <FitDialog
          title={`Drag ${label.toLowerCase()} from a log`}
          {...{ build, way }}
          data={given?.drag.from === "fitted" ? given.drag.data : null}
          onKeep={(data) => keep({ from: "fitted", data })}
          onClose={() => setFitting(false)}
        />
      )}
    </>
  );
}

/** Where nothing is known yet: the drag of a box 300 mm wide and 200 mm high, give or take a third. */
const FIRST_AREA = { dragArea: 0.06, standardUncertainty: 0.02 };
const FIRST_AREA_NOTE = "Example to be replaced: a box 300 mm wide and 200 mm high, give or take a third";
const STARTING_SPEED = 1;

/** What is typed begins with what was known before. */
function startOf(from: "typed" | "shapes", way: DragWay): DragSource {
  const known = resolved.value.drag && resolvedDrag(resolved.value.drag, way)?.dragArea;
  if (from === "typed") {
    const { dragArea, standardUncertainty } = FIRST_AREA;
    return {
      from,
      dragArea: known?.value ?? dragArea,
      standardUncertainty: known?.standardUncertainty ?? standardUncertainty,
      ...(known === undefined || known === null ? { note: FIRST_AREA_NOTE } : {}),
    };
  }
  return { from, items: [FIRST_SHAPE], speed: STARTING_SPEED, interferenceUncertainty: 0.15 };
}

interface TypedFieldsProps {
  readonly source: Extract<DragSource, { from: "typed" }>;
  readonly keep: (source: DragSource) => unknown;
}

function TypedFields({ source, keep }: TypedFieldsProps) {
  return (
    <div class="form-grid">
      <KeptQuantity
        {...{ label: "Drag area", symbol: "C_D A", dimension: "area", unit: "cm²", positive: true, max: 1000 }}
        help="Drag is ½ ρ V² times it."
        value={source.dragArea}
        onKeep={(dragArea) => dragArea !== null && keep({ ...source, dragArea })}
      />
      <KeptQuantity
        {...{ label: "give or take", dimension: "area", unit: "cm²", min: 0, max: 1000 }}
        help="Standard uncertainty: two in three times it is no further off."
        value={source.standardUncertainty}
        onKeep={(si) => si !== null && keep({ ...source, standardUncertainty: si })}
      />
      <KeptText
        label="Where it is from"
        optional
        value={source.note ?? ""}
        maxLength={4000}
        onKeep={(note) => keep(note === "" ? (without(source, "note") as typeof source) : { ...source, note })}
      />
    </div>
  );
}

interface LinearFieldProps {
  readonly given: DirectionDrag;
  readonly way: DragWay;
  readonly what: string;
}

/** A drag in proportion to the speed, beside the square law. */
function LinearField({ given, way, what }: LinearFieldProps) {
  return (
    <details>
      <summary>A part of the drag that grows with the speed alone</summary>
      <div class="form-grid">
        <KeptQuantity
          label="Linear term, N·s/m"
          symbol="a"
          dimension="number"
          value={given.linear?.value ?? null}
          min={0}
          optional
          help="Slow flow and lines that rub. Left empty: that of the fit, or none."
          onKeep={(value) =>
            editDrag((drag) => {
              const now = givenDrag(drag, way);
              if (now === undefined) return drag;
              const next =
                value === null
                  ? (without(now, "linear") as DirectionDrag)
                  : { ...now, linear: { standardUncertainty: 0, ...now.linear, value } };
              return withDrag(drag, way, next);
            }, `linear part of ${what}`)
          }
        />
      </div>
    </details>
  );
}
