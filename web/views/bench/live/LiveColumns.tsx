import type { Recipe } from "../../../../shared/model/recipe.ts";
import type { LiveResult, Recording, StoredRecording } from "../../../../shared/model/recording.ts";
import { partOf } from "../../../app/session.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { ColumnsTable } from "../ColumnsTable.tsx";
import { signOwner, turnedRoles, withTurned } from "../columnSigns.ts";
import { columnsModel, withColumn } from "../columnsModel.ts";
import { Fold } from "../Fold.tsx";
import { withColumns, withEntry } from "../recipeEdits.ts";
import { editRecording } from "./liveState.ts";

interface LiveColumnsProps {
  readonly recording: StoredRecording;
  readonly result: LiveResult;
}

/** What each column is taken for. A change takes effect at once: the next result rests on it. */
export function LiveColumns({ recording: { id, document }, result }: LiveColumnsProps) {
  const { recipe, confirmed } = document;
  const { inspection, columns } = result;
  if (inspection === null) return null;
  const model = columnsModel(inspection, columns, document.purpose === "propeller" ? [] : ["thrust"]);
  const turned = turnedRoles(recipe);
  const edit = (label: string, change: (recipe: Recipe) => Recipe) =>
    void editRecording(id, label, (now) => ({ ...now, recipe: change(now.recipe) }));
  const polePairs = recipe.polePairs ?? partOf("motors", recipe.motorId)?.document.polePairs ?? null;
  const confirm = (now: Recording): Recording => ({
    ...now,
    confirmed: true,
    recipe: withEntry(withColumns(now.recipe, columns), "polePairs", polePairs ?? undefined),
  });
  return (
    <Fold id="bench-columns" title="Columns" note={confirmed ? "confirmed" : "to confirm"} open={!confirmed}>
      <p>{model.lead}</p>
      <ColumnsTable
        label="Columns of the recording"
        rows={model.rows}
        turned={turned}
        signOwner={(role) => signOwner(recipe, role)}
        onUse={(row, role, unit) =>
          edit(`Set column ${row.header}`, (now) =>
            withColumns(now, withColumn(columns, { column: row.column, role, unit })),
          )
        }
        onTurn={(role, isTurned) =>
          edit(isTurned ? "Turned a channel round" : "Took a channel as logged", (now) => {
            const others = [...turned].filter((one) => one !== role);
            return withTurned(now, new Set(isTurned ? [...others, role] : others));
          })
        }
      />
      {model.needsPolePairs && (
        <QuantityField
          label="Magnet pole pairs of the motor"
          dimension="number"
          value={polePairs}
          min={1}
          max={60}
          help="Magnets on the rotor divided by two. Rotation rate is the electrical rate divided by this."
          onChange={() => undefined}
          onCommit={(value) =>
            value !== polePairs &&
            edit("Set the pole pairs", (now) =>
              withEntry(now, "polePairs", value === null ? undefined : Math.round(value)),
            )
          }
        />
      )}
      {model.missing.map((gap) => (
        <p key={gap} class="field-message">
          {gap}
        </p>
      ))}
      {!confirmed && (
        <button
          type="button"
          disabled={model.missing.length > 0}
          onClick={() => void editRecording(id, `Confirmed the columns of ${document.name}`, confirm)}
        >
          These columns are right
        </button>
      )}
    </Fold>
  );
}
