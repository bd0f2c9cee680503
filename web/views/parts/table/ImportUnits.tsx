import type { PartsTableColumn } from "../../../../shared/model/partsTable.ts";
import type { ImportPartProps } from "./ImportColumns.tsx";
import { unitWords, withColumn, withProposals } from "./tableModel.ts";

/** Units that the table does not write, each with what every reading would mean; the likely one is marked. */
export function ImportUnits(props: ImportPartProps) {
  const { preview, choices, onChoices } = props;
  const asked = preview.columns.filter(({ readings }) => readings.length > 1);
  const proposed = asked.filter(({ open, unit }) => open && unit !== "").length;
  if (asked.length === 0) return null;
  return (
    <section aria-labelledby="import-units">
      <div class="parts-head">
        <h3 id="import-units">In which unit?</h3>
        {proposed > 1 && (
          <button type="button" onClick={() => onChoices(withProposals(choices, preview))}>
            Take the {proposed} marked units
          </button>
        )}
      </div>
      {asked.map((column) => (
        <UnitQuestion key={column.column} {...props} column={column} />
      ))}
    </section>
  );
}

type UnitQuestionProps = ImportPartProps & { readonly column: PartsTableColumn };

function UnitQuestion({ choices, onChoices, column }: UnitQuestionProps) {
  const { column: at, header, examples, field, unit, open, readings } = column;
  return (
    <fieldset class={open ? "import-question import-open" : "import-question"}>
      <legend>
        {header} <span class="muted">({examples.join("; ")})</span>
      </legend>
      {readings.map((reading) => (
        <div key={reading.unit} class="import-reading">
          <button
            type="button"
            class={open && reading.unit === unit ? "primary" : ""}
            aria-pressed={!open && reading.unit === unit}
            onClick={() => onChoices(withColumn(choices, at, field, reading.unit))}
          >
            {unitWords(reading.unit)}
          </button>
          <span>{reading.implies}</span>
        </div>
      ))}
    </fieldset>
  );
}
