import type { LogInspection } from "../../../shared/model/log.ts";
import type { LogReading } from "../../../shared/model/reading.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { editRun } from "../../app/edits.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { editRecipe } from "./benchState.ts";
import { NoteField } from "./NoteField.tsx";
import {
  AUTOMATIC,
  decimalOptions,
  delimiterOptions,
  encodingOptions,
  lineOf,
  type ReadingChange,
  repairRows,
  THOUSANDS_OPTIONS,
  withReading,
} from "./readingModel.ts";

interface ReadingPanelProps {
  readonly run: StoredDocument<Run>;
  /** Null where the text can not be read as it is stated. */
  readonly inspection: LogInspection | null;
}

/** How the text was read: every repair with its switch, and what a person may state over it. */
export function ReadingPanel({ run, inspection }: ReadingPanelProps) {
  const { reading } = run.document.recipe;
  const rows = repairRows(inspection?.repairs ?? [], reading);
  const isStated = reading !== undefined;
  return (
    <>
      {rows.length > 0 && (
        <div class="hint">
          <p>Repaired while reading, nothing else was changed:</p>
          <ul class="bench-repairs">
            {rows.map(({ key, message, change }) => (
              <li key={key}>
                {message}{" "}
                {change && (
                  <button type="button" class="quiet" onClick={() => void editRecipe(change.text, change.apply)}>
                    {change.text}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
      <details open={inspection === null}>
        <summary>Read the text differently {isStated && <span class="chip">changed by you</span>}</summary>
        <ReadingFields run={run} inspection={inspection} />
      </details>
    </>
  );
}

function ReadingFields({ run, inspection }: ReadingPanelProps) {
  const reading: LogReading = run.document.recipe.reading ?? {};
  const shape = inspection?.shape ?? null;
  // Other marks make other columns: the person looks at them again.
  const state = (label: string, change: ReadingChange) =>
    void editRun(run.id, label, (now) => ({ ...now, confirmed: false, recipe: withReading(now.recipe, change) }));
  const stated = <K extends keyof LogReading>(key: K, value: string): ReadingChange => ({
    [key]: value === AUTOMATIC ? undefined : value,
  });
  const headerLine = reading.headerLine;
  return (
    <>
      <div class="form-grid">
        <SelectField
          label="Between two cells"
          value={reading.delimiter ?? AUTOMATIC}
          options={delimiterOptions(shape)}
          onChange={(value) => state("Set what stands between cells", stated("delimiter", value))}
        />
        <SelectField
          label="Decimal mark"
          value={reading.decimalMark ?? AUTOMATIC}
          options={decimalOptions(shape)}
          onChange={(value) => state("Set the decimal mark", stated("decimalMark", value))}
        />
        <SelectField
          label="Groups of three digits are thousands"
          value={reading.thousands ?? AUTOMATIC}
          options={THOUSANDS_OPTIONS}
          onChange={(value) => state("Set the thousands mark", stated("thousands", value))}
        />
        <SelectField
          label="Encoding"
          value={reading.encoding ?? AUTOMATIC}
          options={encodingOptions(shape)}
          onChange={(value) => state("Set the encoding", stated("encoding", value))}
        />
        <NoteField
          label="Header on line"
          value={headerLine === undefined ? "" : headerLine === null ? "none" : String(headerLine)}
          help={`A line number, or “none”. Empty: as found (${shape?.headerLine ?? "none"}).`}
          onCommit={(text) => {
            const line = text.toLowerCase() === "none" ? undefined : lineOf(text);
            if (text.toLowerCase() === "none") state("Read without a header", { headerLine: null });
            else if (line !== null) state("Set the line of the header", { headerLine: line });
          }}
        />
        <NoteField
          label="First line of numbers"
          value={reading.firstDataLine === undefined ? "" : String(reading.firstDataLine)}
          help={`A line number. Empty: as found${shape === null ? "" : ` (${shape.firstDataLine})`}.`}
          onCommit={(text) => {
            const line = lineOf(text);
            if (line !== null) state("Set the first line of numbers", { firstDataLine: line });
          }}
        />
      </div>
      {run.document.recipe.reading !== undefined && (
        <button
          type="button"
          class="quiet"
          onClick={() =>
            void editRun(run.id, "Back to what the reader finds", (now) => {
              const { reading: _former, ...recipe } = now.recipe;
              return { ...now, confirmed: false, recipe };
            })
          }
        >
          Back to what the reader finds
        </button>
      )}
    </>
  );
}
