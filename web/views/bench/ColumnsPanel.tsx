import { useEffect, useState } from "preact/hooks";
import type { LogInspection } from "../../../shared/model/log.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun } from "../../app/edits.ts";
import { focusQuestion } from "../../app/focusQuestion.ts";
import { wantedSection } from "../../app/sections.ts";
import { partOf } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { ColumnsTable } from "./ColumnsTable.tsx";
import { signOwner, withTurned } from "./columnSigns.ts";
import { useColumnsDraft } from "./columnsDraft.ts";
import { type ColumnsModel, columnsModel, ownChoices } from "./columnsModel.ts";
import { ReadingChoices } from "./ReadingChoices.tsx";
import { ReadingPanel } from "./ReadingPanel.tsx";
import { readingOfRun } from "./readingOwner.ts";
import { withColumns, withEntry } from "./recipeEdits.ts";

interface ColumnsPanelProps {
  readonly run: StoredDocument<Run>;
  readonly inspection: LogInspection;
}

/** What each column stands for. Nothing is used until a person has looked at it and confirmed. */
export function ColumnsPanel({ run, inspection }: ColumnsPanelProps) {
  const { recipe, confirmed, companion, file } = run.document;
  const draft = useColumnsDraft(recipe, recipe, inspection);
  const ofMotor = partOf("motors", recipe.motorId)?.document.polePairs;
  const [polePairs, setPolePairs] = useState<number | null>(recipe.polePairs ?? ofMotor ?? null);
  const model = columnsModel(
    inspection,
    draft.uses,
    companion?.columns.map(({ role }) => role),
  );
  const confirm = () =>
    void editRun(run.id, `Confirmed the columns of ${run.document.name}`, (document) => ({
      ...document,
      confirmed: true,
      recipe: withEntry(
        withTurned(withColumns(document.recipe, draft.uses), draft.turned),
        "polePairs",
        polePairs ?? undefined,
      ),
    })).then((stored) => stored && focusQuestion("bench-columns"));
  return (
    <ColumnsFold name={file.name} confirmed={confirmed}>
      <p>{confirmed ? model.size : model.lead}</p>
      <ReadingPanel owner={readingOfRun(run)} inspection={inspection} />
      <ReadingChoices choices={ownChoices(inspection)} uses={draft.uses} onChoose={draft.use} />
      <Warnings items={inspection.warnings} />
      <ColumnsTable
        label="Columns of the log"
        rows={model.rows}
        turned={draft.turned}
        signOwner={(role) => signOwner(recipe, role)}
        onUse={draft.change}
        onTurn={draft.turn}
      />
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
      <Confirmation gaps={gapsOf(model, polePairs)} confirmed={confirmed} onConfirm={confirm} />
    </ColumnsFold>
  );
}

function gapsOf({ missing, needsPolePairs }: ColumnsModel, polePairs: number | null): readonly string[] {
  return needsPolePairs && polePairs === null
    ? [...missing, "The log counts electrical turns: give the pole pairs of the motor."]
    : missing;
}

interface ConfirmationProps {
  readonly gaps: readonly string[];
  readonly confirmed: boolean;
  readonly onConfirm: () => void;
}

function Confirmation({ gaps, confirmed, onConfirm }: ConfirmationProps) {
  return (
    <>
      {gaps.map((gap) => (
        <p key={gap} class="field-message">
          {gap}
        </p>
      ))}
      <button type="button" class="primary" disabled={gaps.length > 0} onClick={onConfirm}>
        {confirmed ? "Store these columns" : "These columns are right"}
      </button>
    </>
  );
}

interface ColumnsFoldProps {
  readonly name: string;
  readonly confirmed: boolean;
  readonly children: preact.ComponentChildren;
}

/** Open until the columns are confirmed, and when the list of sections leads to it. */
function ColumnsFold({ name, confirmed, children }: ColumnsFoldProps) {
  const [unfolded, setUnfolded] = useState(!confirmed);
  const led = wantedSection.value?.id === "bench-columns";
  useEffect(() => {
    if (led) setUnfolded(true);
  }, [led]);
  return (
    <details
      class="card bench-columns fold"
      id="bench-columns"
      open={unfolded}
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>
        <h2>Columns of {name}</h2> <span class="chip">{confirmed ? "confirmed" : "to confirm"}</span>
      </summary>
      {children}
    </details>
  );
}
