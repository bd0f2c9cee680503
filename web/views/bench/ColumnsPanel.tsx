import { useEffect, useState } from "preact/hooks";
import { recipeFromGuesses } from "../../../shared/bench/recipeFromGuesses.ts";
import type { LogInspection } from "../../../shared/model/log.ts";
import type { ColumnRole, ColumnUse } from "../../../shared/model/recipe.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun } from "../../app/edits.ts";
import { focusQuestion } from "../../app/focusQuestion.ts";
import { partOf } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { type ColumnRow, columnsModel, ROLES, roleTitle, unitForRole, withColumn } from "./columnsModel.ts";
import { ReadingChoices } from "./ReadingChoices.tsx";
import { ReadingPanel } from "./ReadingPanel.tsx";
import { withColumns, withEntry } from "./recipeEdits.ts";
import { wantedSection } from "./sections.ts";

interface ColumnsPanelProps {
  readonly run: StoredDocument<Run>;
  readonly inspection: LogInspection;
}

/** What each column stands for. Nothing is used until a person has looked at it and confirmed. */
export function ColumnsPanel({ run, inspection }: ColumnsPanelProps) {
  const { recipe, confirmed, companion } = run.document;
  const [uses, setUses] = useState<readonly ColumnUse[]>(() => columnsThatFit(run.document, inspection));
  const ofMotor = partOf("motors", recipe.motorId)?.document.polePairs;
  const [polePairs, setPolePairs] = useState<number | null>(recipe.polePairs ?? ofMotor ?? null);
  const [unfolded, setUnfolded] = useState(!confirmed);
  const led = wantedSection.value?.id === "bench-columns";
  useEffect(() => {
    if (led) setUnfolded(true);
  }, [led]);
  const model = columnsModel(
    inspection,
    uses,
    companion?.columns.map(({ role }) => role),
  );
  const gaps = [
    ...model.missing,
    ...(model.needsPolePairs && polePairs === null
      ? ["The log counts electrical turns: give the pole pairs of the motor."]
      : []),
  ];
  const change = (row: ColumnRow, role: ColumnRole, unit: string) =>
    setUses(withColumn(uses, { column: row.column, role, unit: role === "ignore" ? row.unit : unit }));
  const confirm = () =>
    void editRun(run.id, `Confirmed the columns of ${run.document.name}`, (document) => ({
      ...document,
      confirmed: true,
      recipe: withEntry(withColumns(document.recipe, uses), "polePairs", polePairs ?? undefined),
    })).then((stored) => stored && focusQuestion());

  return (
    <details
      class="card bench-columns bench-fold"
      id="bench-columns"
      open={unfolded}
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>
        <h2>Columns of {run.document.file.name}</h2>{" "}
        {confirmed ? <span class="chip">confirmed</span> : <span class="chip">to confirm</span>}
      </summary>
      <p>{model.lead}</p>
      <ReadingPanel run={run} inspection={inspection} />
      <ReadingChoices
        choices={inspection.choices ?? []}
        uses={uses}
        onChoose={(use) => setUses(withColumn(uses, use))}
      />
      <Warnings items={inspection.warnings} />
      <TableBox label="Columns of the log">
        <table>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">First values</th>
              <th scope="col">Stands for</th>
              <th scope="col">Unit</th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            {model.rows.map((row) => (
              <ColumnLine key={row.column} row={row} onChange={(role, unit) => change(row, role, unit)} />
            ))}
          </tbody>
        </table>
      </TableBox>
      {model.needsPolePairs && (
        <QuantityField
          label="Magnet pole pairs of the motor"
          dimension="number"
          value={polePairs}
          min={1}
          max={60}
          help="Magnets on the rotor divided by two. Rotation rate is the electrical rate divided by this."
          onChange={(value) => setPolePairs(value === null ? null : Math.round(value))}
        />
      )}
      {gaps.map((gap) => (
        <p key={gap} class="field-message">
          {gap}
        </p>
      ))}
      <button type="button" class="primary" disabled={gaps.length > 0} onClick={confirm}>
        {confirmed ? "Store these columns" : "These columns are right"}
      </button>
    </details>
  );
}

/** What is stored, or what is guessed anew where the text is now read into other columns. */
function columnsThatFit({ recipe }: Run, { guesses, shape }: LogInspection): readonly ColumnUse[] {
  const fits = recipe.columns.every(({ column }) => column < shape.columns.length);
  const isWhole = recipe.columns.length === shape.columns.length || recipe.reading === undefined;
  return fits && isWhole ? recipe.columns : recipeFromGuesses({ guesses, fluid: recipe.fluid }).columns;
}

interface ColumnLineProps {
  readonly row: ColumnRow;
  readonly onChange: (role: ColumnRole, unit: string) => void;
}

/** One column: what it holds, what it is taken for and why, and what else it could be. */
function ColumnLine({ row, onChange }: ColumnLineProps) {
  return (
    <tr class={row.sure ? "" : "bench-unsure"}>
      <th scope="row">{row.header}</th>
      <td class="bench-values">{row.firstValues}</td>
      <td>
        <select
          aria-label={`What ${row.header} stands for`}
          value={row.role}
          onChange={(event) => {
            const role = event.currentTarget.value as ColumnRole;
            onChange(role, unitForRole(role, row.unit));
          }}
        >
          {ROLES.map((role) => (
            <option key={role} value={role} selected={role === row.role}>
              {roleTitle(role)}
            </option>
          ))}
        </select>
      </td>
      <td>
        {row.role !== "ignore" && (
          <select
            aria-label={`Unit of ${row.header}`}
            value={row.unit}
            onChange={(event) => onChange(row.role, event.currentTarget.value)}
          >
            {row.units.map((unit) => (
              <option key={unit} value={unit} selected={unit === row.unit}>
                {unit === "1" || unit === "" ? "plain number" : unit === "us" ? "µs" : unit}
              </option>
            ))}
          </select>
        )}
      </td>
      <td>
        {!row.sure && <span class="chip">look</span>} {row.reason}
        {row.alternatives.map((other) => (
          <button
            key={other.text}
            type="button"
            class="quiet bench-alternative"
            onClick={() => onChange(other.role, other.unit)}
          >
            {other.text}
          </button>
        ))}
      </td>
    </tr>
  );
}
