import type { PartsTableChoices, PartsTableColumn, PartsTablePreview } from "../../../../shared/model/partsTable.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import type { FormKind } from "../partsModel.ts";
import { fieldOptions, unitOptions, unitWords, withColumn } from "./tableModel.ts";

export interface ImportPartProps {
  readonly kind: FormKind;
  readonly preview: PartsTablePreview;
  readonly choices: PartsTableChoices;
  readonly onChoices: (choices: PartsTableChoices) => void;
}

/** What each column is taken for and why. */
export function ImportColumns(props: ImportPartProps) {
  return (
    <section aria-labelledby="import-columns">
      <h3 id="import-columns">What the columns hold</h3>
      <TableBox label="Columns of the table">
        <table>
          <Heads columns={["Column", "First values", "Stands for", "Unit", "Why"]} />
          <tbody>
            {props.preview.columns.map((column) => (
              <ColumnRow key={column.column} {...props} column={column} />
            ))}
          </tbody>
        </table>
      </TableBox>
    </section>
  );
}

type ColumnRowProps = ImportPartProps & { readonly column: PartsTableColumn };

function ColumnRow({ kind, choices, onChoices, column }: ColumnRowProps) {
  const { header, examples, field, unit, open, reason } = column;
  const name = header === "" ? `column ${column.column + 1}` : header;
  const choose = (newField: string, newUnit: string) =>
    onChoices(withColumn(choices, column.column, newField, newUnit));
  const units = unitOptions(kind, field);
  return (
    <tr class={open ? "import-open" : ""}>
      <th scope="row">{name}</th>
      <td class="import-values">{examples.join(", ")}</td>
      <td>
        <select
          aria-label={`What ${name} stands for`}
          value={field}
          onChange={(event) => choose(event.currentTarget.value, "")}
        >
          {fieldOptions(kind).map(({ value, label }) => (
            <option key={value} value={value} selected={value === field}>
              {label}
            </option>
          ))}
        </select>
      </td>
      <td>
        {units.length > 0 && (
          <select
            aria-label={`Unit of ${name}`}
            value={open ? "" : unit}
            onChange={(event) => choose(field, event.currentTarget.value)}
          >
            {(open || unit === "") && <option value="">{open ? "choose" : "in the cells"}</option>}
            {units.map((one) => (
              <option key={one} value={one} selected={!open && one === unit}>
                {unitWords(one)}
              </option>
            ))}
          </select>
        )}
      </td>
      <td class="import-why">
        {open && <span class="chip">choose</span>} {reason}
      </td>
    </tr>
  );
}
