import type { LogInspection } from "../../../shared/model/log.ts";
import type { LogReading } from "../../../shared/model/reading.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { NoteField } from "./NoteField.tsx";
import {
  AUTOMATIC,
  LINES,
  lineProblem,
  lineText,
  MARKS,
  repairRows,
  withLine,
  withoutReading,
  withReading,
} from "./readingModel.ts";
import type { ReadingOwner } from "./readingOwner.ts";

interface ReadingPanelProps {
  readonly owner: ReadingOwner;
  /** Null where the text can not be read as it is stated. */
  readonly inspection: LogInspection | null;
}

/** How the text was read: every repair with its switch, and what a person may state over it. */
export function ReadingPanel({ owner, inspection }: ReadingPanelProps) {
  return (
    <>
      <Repairs owner={owner} inspection={inspection} />
      <details open={inspection === null}>
        <summary>
          Read the text differently {owner.reading !== undefined && <span class="chip">changed by you</span>}
        </summary>
        <ReadingFields owner={owner} inspection={inspection} />
      </details>
    </>
  );
}

function Repairs({ owner, inspection }: ReadingPanelProps) {
  const rows = repairRows(inspection?.repairs ?? [], owner.reading);
  if (rows.length === 0) return null;
  return (
    <div class="hint">
      <p>Repaired while reading, nothing else was changed:</p>
      <ul class="bench-repairs">
        {rows.map(({ key, message, change }) => (
          <li key={key}>
            {message}{" "}
            {change && (
              <button type="button" class="quiet" onClick={() => owner.repair(change.text, change.apply)}>
                {change.text}
              </button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

function ReadingFields({ owner, inspection }: ReadingPanelProps) {
  const reading: LogReading = owner.reading ?? {};
  const shape = inspection?.shape ?? null;
  return (
    <>
      <div class="form-grid">
        {MARKS.map(({ key, label, said, options }) => (
          <SelectField
            key={key}
            label={label}
            value={reading[key] ?? AUTOMATIC}
            options={options(shape)}
            onChange={(value) =>
              owner.restate(said, (kept) => withReading(kept, { [key]: value === AUTOMATIC ? undefined : value }))
            }
          />
        ))}
        {LINES.map(({ key, label, said, help }) => (
          <NoteField
            key={key}
            label={label}
            value={lineText(reading[key])}
            help={help(shape)}
            problemOf={(text) => lineProblem(key, text)}
            onCommit={(text) => owner.restate(said, (kept) => withLine(kept, key, text))}
          />
        ))}
      </div>
      {owner.reading !== undefined && (
        <button
          type="button"
          class="quiet"
          onClick={() => owner.restate("Back to what the reader finds", withoutReading)}
        >
          Back to what the reader finds
        </button>
      )}
    </>
  );
}
