import type { ColumnRole, ColumnUse, Recipe } from "../../../../shared/model/recipe.ts";
import type { LiveResult, Recording, StoredRecording } from "../../../../shared/model/recording.ts";
import { Fold } from "../../../app/Fold.tsx";
import { partOf } from "../../../app/session.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { ColumnsTable } from "../ColumnsTable.tsx";
import { signOwner, turnedRoles, withTurned } from "../columnSigns.ts";
import { type ColumnRow, columnsModel, withColumn } from "../columnsModel.ts";
import { withColumns, withEntry } from "../recipeEdits.ts";
import type { RecipeChange } from "../StandParts.tsx";
import { editRecording } from "./recordingActs.ts";

interface LiveColumnsProps {
  readonly recording: StoredRecording;
  readonly result: LiveResult;
}

/** What each column is taken for. A change takes effect at once: the next result rests on it. */
export function LiveColumns({ recording, result }: LiveColumnsProps) {
  const { id, document } = recording;
  const { recipe, confirmed, purpose } = document;
  const { inspection } = result;
  if (inspection === null) return null;
  // What was stated is on show at once: the result that rests on it comes later.
  const columns = recipe.columns.length > 0 ? recipe.columns : result.columns;
  const model = columnsModel(inspection, columns, purpose === "propeller" ? [] : ["thrust"]);
  const edit: RecipeChange = (label, change) =>
    editRecording(id, label, (now) => ({ ...now, recipe: change(now.recipe) }));
  const confirm = () =>
    void editRecording(id, `Confirmed the columns of ${document.name}`, (now) => confirmedAs(now, columns));
  return (
    <Fold
      id="bench-columns"
      title="Columns"
      note={confirmed ? "confirmed" : "to confirm"}
      open={!confirmed}
      class="bench-columns"
    >
      <p>{model.lead}</p>
      <LiveColumnsTable recipe={recipe} columns={columns} rows={model.rows} onChange={edit} />
      {model.needsPolePairs && <PolePairs recipe={recipe} onChange={edit} />}
      {model.missing.map((gap) => (
        <p key={gap} class="field-message">
          {gap}
        </p>
      ))}
      {!confirmed && (
        <button type="button" disabled={model.missing.length > 0} onClick={confirm}>
          These columns are right
        </button>
      )}
    </Fold>
  );
}

interface LiveColumnsTableProps {
  readonly recipe: Recipe;
  readonly columns: readonly ColumnUse[];
  readonly rows: readonly ColumnRow[];
  readonly onChange: RecipeChange;
}

function LiveColumnsTable({ recipe, columns, rows, onChange }: LiveColumnsTableProps) {
  const turned = turnedRoles(recipe);
  const withUse = (changed: ColumnUse) => (now: Recipe) => withColumns(now, withColumn(columns, changed));
  const turnedWith = (role: ColumnRole, isTurned: boolean) => {
    const others = [...turned].filter((one) => one !== role);
    return new Set(isTurned ? [...others, role] : others);
  };
  return (
    <ColumnsTable
      label="Columns of the recording"
      rows={rows}
      turned={turned}
      signOwner={(role) => signOwner(recipe, role)}
      onUse={({ column, header }, role, unit) => onChange(`Set column ${header}`, withUse({ column, role, unit }))}
      onTurn={(role, isTurned) =>
        onChange(isTurned ? "Turned a channel round" : "Took a channel as logged", (now) =>
          withTurned(now, turnedWith(role, isTurned)),
        )
      }
    />
  );
}

/** Stated for the run, else those of the motor on the stand. */
const polePairsOf = ({ polePairs, motorId }: Recipe) =>
  polePairs ?? partOf("motors", motorId)?.document.polePairs ?? null;

function PolePairs({ recipe, onChange }: { readonly recipe: Recipe; readonly onChange: RecipeChange }) {
  const polePairs = polePairsOf(recipe);
  return (
    <QuantityField
      label="Magnet pole pairs of the motor"
      dimension="number"
      value={polePairs}
      min={1}
      max={60}
      help="Magnets on the rotor divided by two. Rotation rate is the electrical rate divided by this."
      onChange={() => undefined}
      onCommit={(value) =>
        value !== recipe.polePairs &&
        onChange("Set the pole pairs", (now) =>
          withEntry(now, "polePairs", value === null ? undefined : Math.round(value)),
        )
      }
    />
  );
}

function confirmedAs(now: Recording, columns: readonly ColumnUse[]): Recording {
  const polePairs = polePairsOf(now.recipe) ?? undefined;
  return { ...now, confirmed: true, recipe: withEntry(withColumns(now.recipe, columns), "polePairs", polePairs) };
}
