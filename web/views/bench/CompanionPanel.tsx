import { useMemo, useState } from "preact/hooks";
import { ROLE_NAMES } from "../../../shared/log/roleUnits.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { readAlignment } from "../../api/client.ts";
import { editRun } from "../../app/edits.ts";
import { openProjectId } from "../../app/session.ts";
import { Chart } from "../../charts/Chart.tsx";
import { FileDrop } from "../../forms/FileDrop.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { takeCompanion } from "./benchState.ts";
import { CompanionColumns } from "./CompanionColumns.tsx";
import { overlayChart, withLag, withoutCompanion } from "./companionModel.ts";
import { useRead } from "./useRead.ts";

/** The electrical log of the same run, recorded on a clock of its own: added, laid over the log, and moved by hand. */
export function CompanionPanel({ run }: { readonly run: StoredDocument<Run> }) {
  const { companion } = run.document;
  const [problem, setProblem] = useState("");
  if (companion === undefined) {
    return (
      <details class="card" id="bench-companion">
        <summary>Add the electrical log of the same run</summary>
        <FileDrop
          label="Voltage and current, where another logger wrote them"
          help="Its clock is set by what both logs show: rotation rate or command, or thrust against current."
          accept=".csv,.tsv,.txt,.log,.dat,text/*"
          onFiles={([file]) => {
            if (file) void takeCompanion(run.id, file).then(setProblem);
          }}
        />
        {problem !== "" && <p class="field-message">{problem}</p>}
      </details>
    );
  }
  return <LaidOver key={run.id} run={run} companion={companion} />;
}

interface LaidOverProps {
  readonly run: StoredDocument<Run>;
  readonly companion: NonNullable<Run["companion"]>;
}

function LaidOver({ run, companion }: LaidOverProps) {
  const { recipe } = run.document;
  const basis = JSON.stringify([run.id, companion, recipe.columns, recipe.reading, recipe.polePairs]);
  const read = useRead(basis, (stop) => readAlignment(openProjectId(), run.id, stop));
  const picture = typeof read === "string" ? null : read;
  const chart = useMemo(() => (picture ? overlayChart(picture) : null), [picture]);
  const used = companion.columns.filter(({ role }) => role !== "ignore" && role !== "time");
  const lag = companion.lag.mode === "stated" ? companion.lag.seconds : (picture?.alignment.lag.value ?? null);
  return (
    <details class="card bench-companion" id="bench-companion" open>
      <summary>Electrical log: {companion.file.name}</summary>
      <p>
        {typeof read === "string" ? read : (picture?.alignment.sentence ?? "Laying it over the log …")} It holds{" "}
        {used.map(({ role, unit }) => `${ROLE_NAMES[role]} in ${unit}`).join(", ") || "no channel that is used"}.
      </p>
      {chart && <Chart spec={chart} height={220} />}
      <details class="bench-columns">
        <summary>Columns of {companion.file.name}</summary>
        <CompanionColumns run={run} companion={companion} />
      </details>
      <Lag run={run} companion={companion} lag={lag} />
    </details>
  );
}

/** Where the electrical log lies over the log: found, or stated; and the way to take it off again. */
function Lag({ run, companion, lag }: LaidOverProps & { readonly lag: number | null }) {
  const { name } = run.document;
  return (
    <>
      <div class="form-grid">
        <QuantityField
          label="Added to its clock"
          dimension="time"
          unit="s"
          value={lag}
          help="Found from both logs until you state it."
          onChange={() => undefined}
          onCommit={(seconds) =>
            seconds !== null &&
            seconds !== lag &&
            void editRun(run.id, `Moved the electrical log of ${name}`, withLag(seconds))
          }
        />
      </div>
      <div class="row">
        {companion.lag.mode === "stated" && (
          <button
            type="button"
            class="quiet"
            onClick={() => void editRun(run.id, "Found the lag from both logs", withLag(null))}
          >
            Find it from both logs
          </button>
        )}
        <button
          type="button"
          class="quiet danger"
          onClick={() => void editRun(run.id, `Took the electrical log off ${name}`, withoutCompanion)}
        >
          Take this log off the run
        </button>
      </div>
    </>
  );
}
