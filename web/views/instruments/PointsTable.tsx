import type { DraftRow } from "./instrumentDraft.ts";
import { withCell } from "./instrumentDraft.ts";

export interface PointsTableProps {
  readonly rows: readonly DraftRow[];
  readonly appliedUnit: string;
  readonly readingUnit: string;
  readonly onRows: (rows: readonly DraftRow[]) => void;
  /** Called with pasted text; true where it was a table and was taken. */
  readonly onPaste: (text: string) => boolean;
}

/** Points typed cell by cell, or pasted as a block into any cell. */
export function PointsTable(props: PointsTableProps) {
  const { rows, appliedUnit, readingUnit } = props;
  return (
    <div class="points-box">
      <table class="points">
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Applied{appliedUnit && `, ${appliedUnit}`}</th>
            <th scope="col">Reading{readingUnit && `, ${readingUnit}`}</th>
            <th scope="col">
              <span class="visually-hidden">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((_, at) => (
            <PointRow key={at} {...props} at={at} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** One point; the last row is the empty one to type the next into. */
function PointRow({ rows, at, onRows, onPaste }: PointsTableProps & { readonly at: number }) {
  const cell = (column: keyof DraftRow, label: string) => (
    <td>
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        aria-label={`${label}, row ${at + 1}`}
        value={rows[at]![column]}
        onInput={(event) => onRows(withCell(rows, at, column, event.currentTarget.value))}
        onPaste={(event) => {
          if (onPaste(event.clipboardData?.getData("text/plain") ?? "")) event.preventDefault();
        }}
      />
    </td>
  );
  return (
    <tr>
      <th scope="row">{at + 1}</th>
      {cell("applied", "Applied")}
      {cell("reading", "Reading")}
      <td>
        {at < rows.length - 1 && (
          <button
            type="button"
            class="quiet"
            aria-label={`Take out row ${at + 1}`}
            onClick={() => onRows(rows.toSpliced(at, 1))}
          >
            ×
          </button>
        )}
      </td>
    </tr>
  );
}
