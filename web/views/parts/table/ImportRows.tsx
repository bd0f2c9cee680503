import { useState } from "preact/hooks";
import type { PartsTableAct, PartsTableRow } from "../../../../shared/model/partsTable.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { capitalised, counts, joined } from "../../../app/words.ts";
import type { ImportPartProps } from "./ImportColumns.tsx";
import { ACT_OPTIONS, actText, needsALook, shownRows, withRow } from "./tableModel.ts";

const FIRST_ROWS = 20;

/** What each row becomes; what can not be read is told by its cell, what is doubtful is asked. */
export function ImportRows(props: ImportPartProps) {
  const [all, setAll] = useState(false);
  const { rows, told } = props.preview;
  const shown = all ? rows : shownRows(rows, FIRST_ROWS);
  const taken = rows.filter(
    ({ storedId, act, changes }) => storedId !== null && !(act === "skip" && changes.length === 0),
  );
  return (
    <section aria-labelledby="import-rows">
      <h3 id="import-rows">What becomes of the {counts(rows.length, "row")}</h3>
      {told.map((sentence) => (
        <p key={sentence} class="hint">
          {sentence}
        </p>
      ))}
      <OtherColumns {...props} />
      {taken.length > 1 && <ForAll {...props} count={taken.length} />}
      <TableBox label="Rows of the table">
        <table>
          <Heads columns={["Line", "Name", "What becomes of it"]} />
          <tbody>
            {shown.map((row) => (
              <Row key={row.row} {...props} row={row} />
            ))}
          </tbody>
        </table>
      </TableBox>
      {shown.length < rows.length && (
        <button type="button" class="quiet" onClick={() => setAll(true)}>
          Show the other {counts(rows.length - shown.length, "row")}
        </button>
      )}
    </section>
  );
}

/** Whether columns that are not understood are written into the note. */
function OtherColumns({ preview: { leftOut }, choices, onChoices }: ImportPartProps) {
  if (leftOut.length === 0 && choices.others !== "note") return null;
  return (
    <label class="part-check">
      <input
        type="checkbox"
        checked={choices.others === "note"}
        onChange={(event) => onChoices({ ...choices, others: event.currentTarget.checked ? "note" : "leftOut" })}
      />
      <span>
        Write columns that stand for nothing into the note
        {leftOut.length > 0 && <span class="muted"> ({joined(leftOut)}; now left out)</span>}
      </span>
    </label>
  );
}

/** The same for every row whose name is taken. */
function ForAll({ choices, onChoices, count }: ImportPartProps & { readonly count: number }) {
  const choose = (sameName: PartsTableAct) =>
    onChoices({ ...choices, sameName, rows: choices.rows.map(({ act: _act, ...row }) => row) });
  return (
    <div class="row">
      <span>{counts(count, "name")} are taken:</span>
      {ACT_OPTIONS.filter(({ value }) => value !== "ask").map(({ value }) => (
        <button
          key={value}
          type="button"
          aria-pressed={choices.sameName === value}
          onClick={() => choose(value as PartsTableAct)}
        >
          {FOR_ALL[value as PartsTableAct]}
        </button>
      ))}
    </div>
  );
}

const FOR_ALL: Readonly<Record<PartsTableAct, string>> = {
  update: "Change the parts",
  add: "Add more of the same name",
  skip: "Leave these rows out",
};

type RowProps = ImportPartProps & { readonly row: PartsTableRow };

function Row(props: RowProps) {
  const { choices, onChoices, row } = props;
  const { name, act, storedId, changes, problems, doubts } = row;
  const isSame = storedId !== null && act === "skip" && changes.length === 0 && problems.length === 0;
  return (
    <tr class={needsALook(row) && act !== "update" ? "import-open" : ""}>
      <td>{row.row}</td>
      <th scope="row">{name || "no name"}</th>
      <td class="import-why">
        {isSame ? "is as the stored part" : actText(row)}
        {storedId !== null && !isSame && problems.length === 0 && (
          <select
            aria-label={`What becomes of ${name}, line ${row.row}`}
            value={act}
            onChange={(event) =>
              onChoices(withRow(choices, row.row, { act: event.currentTarget.value as PartsTableAct }))
            }
          >
            {ACT_OPTIONS.filter(({ value }) => value !== "ask" || act === "ask").map(({ value, label }) => (
              <option key={value} value={value} selected={value === act}>
                {label}
              </option>
            ))}
          </select>
        )}
        {changes.length > 0 && act !== "skip" && <p class="muted">Would change: {joined(changes)}.</p>}
        {problems.map(({ where, message }) => (
          <p key={where + message} class="field-message">
            {message}
          </p>
        ))}
        {doubts.map(({ code, message }) => (
          <p key={code}>{capitalised(message)}</p>
        ))}
        {doubts.length > 0 && <Doubtful {...props} />}
      </td>
    </tr>
  );
}

/** Implausible constants of a motor: other readings, or as they stand. */
function Doubtful({ choices, onChoices, row: { row, name, readings, open } }: RowProps) {
  return (
    <ul class="import-readings">
      {readings.map(({ speedConstant, says }) => (
        <li key={says}>
          <button
            type="button"
            aria-label={`${name}: ${says}`}
            onClick={() => onChoices(withRow(choices, row, { speedConstant }))}
          >
            {capitalised(says.split(": ")[0]!)}
          </button>{" "}
          {says.split(": ")[1]}
        </li>
      ))}
      <li>
        <button
          type="button"
          aria-label={`${name}: keep as typed`}
          aria-pressed={!open}
          onClick={() => onChoices(withRow(choices, row, { keep: open }))}
        >
          Keep as typed
        </button>
      </li>
    </ul>
  );
}
