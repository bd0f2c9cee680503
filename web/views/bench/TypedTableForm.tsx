import { useState } from "preact/hooks";
import { TableBox } from "../../app/TableBox.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { takeTable } from "./benchState.ts";
import {
  EMPTY_TABLE,
  isBlock,
  type TypedTable,
  tableGap,
  tableText,
  withCell,
  withColumnAdded,
  withHead,
  withPasted,
  withRowAdded,
} from "./tableModel.ts";

/** Readings from a notebook or a spreadsheet, typed or pasted, kept as a run. */
export function TypedTableForm({ onKept }: { readonly onKept: () => void }) {
  const [name, setName] = useState("Readings by hand");
  const [table, setTable] = useState(EMPTY_TABLE);
  const [asked, setAsked] = useState(false);
  const gap = name.trim() === "" ? "Give the table a name." : tableGap(table);
  const keep = async () => {
    setAsked(true);
    if (gap !== "") return;
    if (await takeTable(name.trim(), tableText(table))) onKept();
  };
  return (
    <div class="bench-table">
      <TextField label="Name" value={name} maxLength={120} onChange={setName} />
      <p class="hint">
        One row a reading. Write the unit in each head. A block copied from a spreadsheet can be pasted into any cell.
      </p>
      <Cells table={table} onChange={setTable} />
      <div class="row">
        <button type="button" class="quiet" onClick={() => setTable(withRowAdded(table))}>
          Add row
        </button>
        <button type="button" class="quiet" onClick={() => setTable(withColumnAdded(table))}>
          Add column
        </button>
        <button type="button" class="primary" onClick={() => void keep()}>
          Keep table as a run
        </button>
      </div>
      {asked && gap !== "" && (
        <p class="field-message" role="alert">
          {gap}
        </p>
      )}
    </div>
  );
}

interface CellsProps {
  readonly table: TypedTable;
  readonly onChange: (table: TypedTable) => void;
}

function Cells({ table, onChange }: CellsProps) {
  const paste = (row: number, column: number) => (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (!isBlock(text)) return;
    event.preventDefault();
    onChange(withPasted(table, row, column, text));
  };
  return (
    <TableBox label="Readings">
      <table>
        <caption class="visually-hidden">Readings</caption>
        <thead>
          <tr>
            {table.heads.map((head, column) => (
              <th key={column} scope="col">
                <input
                  aria-label={`Head of column ${column + 1}`}
                  value={head}
                  onInput={(event) => onChange(withHead(table, column, event.currentTarget.value))}
                  onPaste={paste(-1, column)}
                />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, r) => (
            <tr key={r}>
              {row.map((cell, c) => (
                <td key={c}>
                  <input
                    aria-label={`Row ${r + 1}, ${table.heads[c] || `column ${c + 1}`}`}
                    inputMode="decimal"
                    value={cell}
                    onInput={(event) => onChange(withCell(table, r, c, event.currentTarget.value))}
                    onPaste={paste(r, c)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
