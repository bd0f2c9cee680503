import { useState } from "preact/hooks";
import { Dialog } from "../../app/Dialog.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { FileDrop } from "../../forms/FileDrop.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { stopUpload, takeFiles, takeTable, uploading } from "./benchState.ts";
import {
  EMPTY_TABLE,
  isBlock,
  tableGap,
  tableText,
  withCell,
  withColumnAdded,
  withHead,
  withPasted,
  withRowAdded,
} from "./tableModel.ts";

/** The two ways in: a file as the logger wrote it, or readings from a notebook or spreadsheet. */
export function Intake() {
  const [typing, setTyping] = useState(false);
  return (
    <div class="bench-intake" id="bench-intake">
      <FileDrop
        label={uploading.value === null ? "Drop thrust stand logs here" : `Reading ${uploading.value} …`}
        help="Any delimited text, many at once. The file is kept as it came."
        accept=".csv,.tsv,.txt,.log,.dat,text/*"
        busy={uploading.value !== null}
        onFiles={(files) => void takeFiles(files)}
      />
      {uploading.value !== null && (
        <div class="row">
          <progress aria-label={`Reading ${uploading.value}`} />
          <button type="button" class="quiet" onClick={stopUpload}>
            Cancel
          </button>
        </div>
      )}
      <button type="button" onClick={() => setTyping(true)}>
        Type or paste a table
      </button>
      {typing && (
        <Dialog title="Type or paste a table" onClose={() => setTyping(false)}>
          <TypedTableForm onKept={() => setTyping(false)} />
        </Dialog>
      )}
    </div>
  );
}

function TypedTableForm({ onKept }: { readonly onKept: () => void }) {
  const [name, setName] = useState("Readings by hand");
  const [table, setTable] = useState(EMPTY_TABLE);
  const [asked, setAsked] = useState(false);
  const gap = name.trim() === "" ? "Give the table a name." : tableGap(table);
  const paste = (row: number, column: number) => (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (!isBlock(text)) return;
    event.preventDefault();
    setTable(withPasted(table, row, column, text));
  };
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
                    onInput={(event) => setTable(withHead(table, column, event.currentTarget.value))}
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
                      onInput={(event) => setTable(withCell(table, r, c, event.currentTarget.value))}
                      onPaste={paste(r, c)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
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
