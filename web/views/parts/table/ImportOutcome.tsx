import type { ImportPartProps } from "./ImportColumns.tsx";
import { importLabel, outcomeText } from "./tableModel.ts";

interface ImportOutcomeProps extends ImportPartProps {
  readonly onImport: (label: string) => void;
  readonly onCancel: () => void;
}

/** What is still open, what the import does, and the button for it. */
export function ImportOutcome({ kind, preview, choices, onChoices, onImport, onCancel }: ImportOutcomeProps) {
  const { open, rows } = preview;
  const unread = rows.filter(({ problems }) => problems.length > 0).length;
  return (
    <section class="import-outcome" aria-label="Import">
      {unread > 0 && unread < rows.length && (
        <label class="part-check">
          <input
            type="checkbox"
            checked={choices.problems === "leaveOut"}
            onChange={(event) =>
              onChoices({ ...choices, problems: event.currentTarget.checked ? "leaveOut" : "refuse" })
            }
          />
          {unread === 1
            ? "Leave out the row that can not be read"
            : `Leave out the ${unread} rows that can not be read`}
        </label>
      )}
      <div role="status">
        {open.length === 0 ? (
          <p>{outcomeText(kind, preview)}</p>
        ) : (
          <>
            <p>To decide before anything is imported:</p>
            <ul>
              {open.map((question) => (
                <li key={question}>{question}</li>
              ))}
            </ul>
          </>
        )}
      </div>
      <div class="row">
        <button
          type="button"
          class="primary"
          disabled={open.length > 0}
          onClick={() => onImport(importLabel(kind, preview))}
        >
          Import
        </button>
        <button type="button" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </section>
  );
}
