import type { Recipe } from "../../../shared/model/recipe.ts";
import type { StandFacts } from "../../../shared/model/stand.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { editRecipe } from "./benchState.ts";
import { withStandFact } from "./standEdits.ts";

interface FactField {
  readonly key: keyof StandFacts;
  readonly label: string;
  readonly dimension: Dimension;
  readonly unit?: string;
  readonly help?: string;
}

const FIELDS: readonly FactField[] = [
  {
    key: "shaftImmersion",
    label: "Depth of the shaft",
    dimension: "length",
    unit: "mm",
    help: "From the surface to the middle of the shaft.",
  },
  { key: "tankLength", label: "Tank length", dimension: "length", unit: "m", help: "Along the shaft." },
  { key: "tankWidth", label: "Tank width", dimension: "length", unit: "m" },
  { key: "tankDepth", label: "Water depth", dimension: "length", unit: "m" },
  {
    key: "loadCellCapacity",
    label: "Capacity of the load cell",
    dimension: "force",
    unit: "N",
    help: "As thrust: lever and calibration counted in.",
  },
  {
    key: "tachometerMarkers",
    label: "Tachometer marks per turn",
    dimension: "number",
    help: "Strips of tape, magnets or blades that it counts.",
  },
  {
    key: "tachometerSampling",
    label: "Looks a second at the marks",
    dimension: "rotationRate",
    unit: "1/s",
    help: "Frame rate of a camera, e.g. 240 1/s; empty for a pulse counter.",
  },
];

/** What only a person can say of the stand; each answer lets one more check be made. */
export function StandFields({ recipe }: { readonly recipe: Recipe }) {
  return (
    <div class="form-grid">
      {FIELDS.map(({ key, label, dimension, unit, help }) => (
        <QuantityField
          key={key}
          label={label}
          dimension={dimension}
          unit={unit}
          help={help}
          value={recipe.stand?.[key] ?? null}
          positive
          optional
          check={key === "tachometerMarkers" ? wholeMarks : undefined}
          onChange={() => undefined}
          onCommit={(value) =>
            value !== (recipe.stand?.[key] ?? null) &&
            void editRecipe(`Stated: ${label.toLowerCase()}`, (now) => withStandFact(now, key, value))
          }
        />
      ))}
    </div>
  );
}

const wholeMarks = (marks: number) =>
  Number.isInteger(marks) && marks <= 100 ? null : "Needed: a whole number of marks, 1 to 100.";
