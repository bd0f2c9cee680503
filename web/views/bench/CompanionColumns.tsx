import type { Companion } from "../../../shared/model/alignment.ts";
import type { LogInspection } from "../../../shared/model/log.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { readCompanionInspection } from "../../api/client.ts";
import { editRun } from "../../app/edits.ts";
import { openProjectId } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { inspection as runInspection } from "./benchState.ts";
import { ColumnsTable } from "./ColumnsTable.tsx";
import { signOwner, turnedRoles, withTurned } from "./columnSigns.ts";
import { useColumnsDraft } from "./columnsDraft.ts";
import { choicesBeside, columnsModel } from "./columnsModel.ts";
import { withCompanionColumns } from "./companionModel.ts";
import { ReadingChoices } from "./ReadingChoices.tsx";
import { ReadingPanel } from "./ReadingPanel.tsx";
import { readingOfCompanion } from "./readingOwner.ts";
import { useRead } from "./useRead.ts";

/** Thrust and rotation rate are the first log's to hold. */
const SAID_BY_FIRST_LOG: ReadonlySet<string> = new Set(["log.no-thrust", "log.no-rotation-rate"]);

interface CompanionColumnsProps {
  readonly run: StoredDocument<Run>;
  readonly companion: Companion;
}

/** What each column of the electrical log stands for, and how its text is read. */
export function CompanionColumns({ run, companion }: CompanionColumnsProps) {
  const { file, reading, columns } = companion;
  const read = useRead(JSON.stringify([run.id, file.sha256, reading]), (stop) =>
    readCompanionInspection(openProjectId(), run.id, stop),
  );
  if (read === null) return <p class="muted">Looking at {file.name} …</p>;
  if (typeof read === "string")
    return (
      <>
        <p class="hint">{read}</p>
        <ReadingPanel owner={readingOfCompanion(run)} inspection={null} />
      </>
    );
  const stored = JSON.stringify([columns, reading, [...turnedRoles(run.document.recipe)]]);
  return <Columns key={stored} run={run} companion={companion} inspection={read} />;
}

function Columns({ run, companion, inspection }: CompanionColumnsProps & { readonly inspection: LogInspection }) {
  const { recipe, name } = run.document;
  const draft = useColumnsDraft(companion, recipe, inspection);
  const model = columnsModel(inspection, draft.uses, ["thrust", "rotationRate"]);
  const beside = runInspection.value?.value;
  const changed =
    JSON.stringify([draft.uses, [...draft.turned].sort()]) !==
    JSON.stringify([companion.columns, [...turnedRoles(recipe)].sort()]);
  const store = () =>
    void editRun(run.id, `Set the columns of the electrical log of ${name}`, (now) => ({
      ...withCompanionColumns(now, draft.uses),
      recipe: withTurned(now.recipe, draft.turned),
    }));
  return (
    <>
      <p>{model.rows.every(({ sure }) => sure) ? model.size : model.lead}</p>
      <ReadingPanel owner={readingOfCompanion(run)} inspection={inspection} />
      {beside && (
        <ReadingChoices choices={choicesBeside(beside, companion.columns)} uses={draft.uses} onChoose={draft.use} />
      )}
      <Warnings items={inspection.warnings.filter(({ code }) => !SAID_BY_FIRST_LOG.has(code))} />
      <ColumnsTable
        label="Columns of the electrical log"
        rows={model.rows}
        turned={draft.turned}
        signOwner={(role) => signOwner(recipe, role)}
        onUse={draft.change}
        onTurn={draft.turn}
      />
      <p class="hint">A channel that the first log has as well is taken from there.</p>
      <button type="button" class="primary" disabled={!changed} onClick={store}>
        Store the columns of the electrical log
      </button>
    </>
  );
}
