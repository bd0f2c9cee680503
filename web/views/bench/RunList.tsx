import { noteChoice } from "../../app/route.ts";
import { wantedSection } from "../../app/sections.ts";
import type { RunRow } from "./benchModel.ts";
import { openRun, rows } from "./benchState.ts";
import { openRecording, recordings } from "./live/liveState.ts";

/** All runs of the project; one is on show. */
export function RunList() {
  const open = openRecording.value === null ? openRun.value?.id : undefined;
  return (
    <nav class="card bench-runs" aria-label="Runs">
      <h2>Runs</h2>
      {rows.value.length === 0 && <p class="hint">No run yet. Drop a log, or type a table.</p>}
      <ul>
        {rows.value.map((row) => (
          <li key={row.id}>
            <RunButton row={row} open={row.id === open} />
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** The list of runs in one line, where the window is narrow; leads to the way in for another log as well. */
export function RunPicker() {
  const open = openRecording.value?.id ?? openRun.value?.id ?? "";
  const listed = [
    ...recordings.value.map(({ id, document }) => ({ id, name: `${document.name} (being recorded)` })),
    ...rows.value,
  ];
  if (listed.length === 0) return null;
  return (
    <div class="bench-picker row">
      <select aria-label="Run on show" value={open} onChange={(event) => noteChoice("run", event.currentTarget.value)}>
        {listed.map(({ id, name }) => (
          <option key={id} value={id} selected={id === open}>
            {name}
          </option>
        ))}
      </select>
      <button type="button" onClick={() => (wantedSection.value = { id: "bench-intake" })}>
        Add a log
      </button>
    </div>
  );
}

function RunButton({ row, open }: { readonly row: RunRow; readonly open: boolean }) {
  return (
    <button
      type="button"
      class={open ? "bench-run bench-run-open" : "bench-run"}
      aria-current={open ? "true" : undefined}
      onClick={() => noteChoice("run", row.id)}
    >
      <span class="bench-run-name">{row.name}</span>
      <span class="bench-run-facts">
        {row.variant}
        {row.mounting !== "" && `, mounting ${row.mounting}`}
      </span>
      {row.thrustCoefficient !== "" && (
        <span class="bench-run-facts">
          K<sub>T</sub> {row.thrustCoefficient}
        </span>
      )}
      {row.flags.map((flag) => (
        <span key={flag} class="chip">
          {flag}
        </span>
      ))}
    </button>
  );
}
